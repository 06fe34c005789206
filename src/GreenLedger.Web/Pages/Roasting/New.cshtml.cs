using GreenLedger.Data;
using GreenLedger.Data.Roasting;
using GreenLedger.Domain;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Roasting;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Roasting;

public sealed class NewModel(LedgerContext db, HouseZone house, TimeProvider clock) : FormPage, IRoastPage
{
    [BindProperty]
    public RoastForm Input { get; set; } = new();

    public RoastWindows Windows { get; private set; } = RoastWindows.Usual;

    public IReadOnlyList<SelectListItem> Roasters { get; private set; } = [];

    public bool IsNew => true;

    public async Task OnGetAsync(Id<Sample>? sample, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.RoastedAt = house.Now;
        Input.By = User.Person();
        Input.ColourScale = Windows.ColourScale;
        Input.Label = sample is null ? null : await db.Samples.Where(one => one.Id == sample).Select(one => one.LabelCode).SingleOrDefaultAsync(cancellationToken);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var label = Input.Label!.Trim().ToUpperInvariant();
        var sample = await db.Samples.SingleOrDefaultAsync(sample => sample.LabelCode == label, cancellationToken);
        Rule.Require(sample is not null, $"No sample here has the label code {label}.", nameof(Input.Label));
        var protocol = await db.NewestOrUsualAsync(clock.GetUtcNow(), cancellationToken);
        var roast = Input.Onto(new SampleRoast(sample, Input.EndedAt(house.Zone), Input.By == default ? User.Person() : Input.By, protocol), house.Zone);
        db.Add(roast);
        await db.SaveChangesAsync(cancellationToken);
        Say($"The roast of {sample.LabelCode} is written down.");
        return RedirectToPage("Roast", new { roast.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Windows = (await db.RoastProtocols.AsNoTracking().NewestAsync(cancellationToken))?.Windows ?? RoastWindows.Usual;
        Roasters = await db.RoastersAsync(cancellationToken);
    }
}
