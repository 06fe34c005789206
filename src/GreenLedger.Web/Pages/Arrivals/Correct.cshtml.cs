using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Puts right what was received.</summary>
public sealed class CorrectModel(LedgerContext db, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Arrival> Id { get; set; }

    [BindProperty]
    public CorrectionForm Input { get; set; } = new();

    public Arrival Arrival { get; private set; } = null!;

    public string LotName { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (!await db.Arrivals.AnyAsync(arrival => arrival.Id == Id, cancellationToken))
        {
            return NotFound();
        }

        await LoadAsync(cancellationToken);
        Input.Show(Arrival.Receipt);
        Input.Version = Arrival.Version;
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.Arrivals.Whole().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } arrival)
        {
            return NotFound();
        }

        OpenedOn(arrival, Input.Version);
        var shipment = await db.Shipments.AsNoTracking().Whole().SingleAsync(one => one.Id == arrival.ShipmentId, cancellationToken);
        arrival.Correct(shipment, Input.Receipt(), Input.Reason ?? "", User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say("The receipt is corrected; how it stood before is kept below.");
        return RedirectToPage("Arrival", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Arrival = await db.Arrivals.AsNoTracking().SingleAsync(one => one.Id == Id, cancellationToken);
        LotName = await db.Lots.Where(lot => lot.Id == Arrival.LotId).Select(lot => lot.Ref + " " + lot.Name).SingleAsync(cancellationToken);
    }
}
