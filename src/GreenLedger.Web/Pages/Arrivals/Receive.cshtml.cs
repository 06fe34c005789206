using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Receives a lot of a shipment, once.</summary>
public sealed class ReceiveModel(LedgerContext db, ReceivingQuery query, HouseZone house, TimeProvider clock) : FormPage
{
    /// <summary>The lot of the shipment.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<ShipmentLot> Id { get; set; }

    [BindProperty]
    public ReceiptForm Input { get; set; } = new();

    public Shipment? Shipment { get; private set; }

    public ShipmentLot? Lot { get; private set; }

    public string LotName { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Lot is null)
        {
            return NotFound();
        }

        if (await db.Arrivals.AsNoTracking().SingleOrDefaultAsync(arrival => arrival.ShipmentLotId == Id, cancellationToken) is { } known)
        {
            return RedirectToPage("Arrival", new { known.Id });
        }

        Input = new ReceiptForm { ReceivedOn = house.Today, Bags = Lot.Bags };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } receiving)
        {
            return NotFound();
        }

        var arrival = receiving.Receive(Input.Receipt(), User.Person(), clock.GetUtcNow());
        db.Add(arrival);
        await db.SaveChangesAsync(cancellationToken);
        Say("Received. Put photographs on it below, draw its sample and cup it blind beside the approved one.");
        return RedirectToPage("Arrival", new { arrival.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Shipment = await db.Shipments.AsNoTracking().Whole().SingleOrDefaultAsync(one => one.Lots.Any(lot => lot.Id == Id), cancellationToken);
        Lot = Shipment?.Lots.Single(lot => lot.Id == Id);
        LotName = await db.Lots.Where(lot => Lot != null && lot.Id == Lot.LotId).Select(lot => lot.Ref + " " + lot.Name).SingleOrDefaultAsync(cancellationToken) ?? "";
    }
}
