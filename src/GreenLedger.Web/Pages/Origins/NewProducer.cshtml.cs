using GreenLedger.Data;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

public sealed class NewProducerModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public ProducerForm Input { get; set; } = new();

    public IReadOnlyList<SelectListItem> Countries { get; private set; } = [];

    public Task OnGetAsync(CancellationToken cancellationToken) => LoadAsync(cancellationToken);

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var producer = new Producer(Input.Name ?? "", Input.Kind, Input.CountryCode);
        Input.Describe(producer);
        db.Add(producer);
        await db.SaveChangesAsync(cancellationToken);
        Say("The producer is added.");
        return RedirectToPage("Producer", new { producer.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Countries = await db.Countries.OrderBy(country => country.Name)
            .Select(country => new SelectListItem(country.Name, country.Code)).ToListAsync(cancellationToken);
}
