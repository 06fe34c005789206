using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Roasting;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Roasting;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Roasting;

internal sealed class CorrectModel(LedgerContext db, Reader reader, HouseZone house) : FormPage, IRoastPage
{
    [BindProperty(SupportsGet = true)]
    public Id<SampleRoast> Id { get; set; }

    [BindProperty]
    public RoastForm Input { get; set; } = new();

    public RoastWindows Windows { get; private set; } = RoastWindows.Usual;

    public IReadOnlyList<SelectListItem> Roasters { get; private set; } = [];

    public bool IsNew => false;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.SampleRoasts.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } roast || (await reader.SealAsync()).Covers(roast.SampleId.Value))
        {
            return NotFound();
        }

        Input = RoastForm.Of(roast, await db.Samples.Where(sample => sample.Id == roast.SampleId).Select(sample => sample.LabelCode).SingleAsync(cancellationToken), house.Zone);
        await LoadAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.SampleRoasts.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } roast)
        {
            return NotFound();
        }

        OpenedOn(roast, Input.Version);
        Input.Onto(roast, house.Zone).RoastedBy(Input.By);
        await db.SaveChangesAsync(cancellationToken);
        Say("The roast is corrected.");
        return RedirectToPage("Roast", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var protocol = await db.SampleRoasts.Where(roast => roast.Id == Id)
            .Join(db.RoastProtocols, roast => roast.ProtocolId, one => one.Id, (roast, one) => one).AsNoTracking().SingleOrDefaultAsync(cancellationToken);
        Windows = protocol?.Windows ?? RoastWindows.Usual;
        Roasters = await db.RoastersAsync(cancellationToken);
    }
}
