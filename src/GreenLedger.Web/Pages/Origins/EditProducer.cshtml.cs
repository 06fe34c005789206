using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

public sealed class EditProducerModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Producer> Id { get; set; }

    [BindProperty]
    public ProducerForm Input { get; set; } = new();

    public IReadOnlyList<SelectListItem> Countries { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        var producer = await db.Producers.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (producer is null)
        {
            return NotFound();
        }

        Input = ProducerForm.Of(producer);
        await LoadAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var producer = await db.Producers.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (producer is null)
        {
            return NotFound();
        }

        OpenedOn(producer, Input.Version);
        Input.Describe(producer);
        await db.SaveChangesAsync(cancellationToken);
        Say("The producer is changed.");
        return RedirectToPage("Producer", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Countries = await db.Countries.OrderBy(country => country.Name)
            .Select(country => new SelectListItem(country.Name, country.Code)).ToListAsync(cancellationToken);
}
