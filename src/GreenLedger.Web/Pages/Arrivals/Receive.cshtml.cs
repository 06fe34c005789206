using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.Display;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Receives a lot of a shipment, once.</summary>
internal sealed class ReceiveModel(LedgerContext db, ReceivingQuery query, AttachmentRules rules, HouseZone house, TimeProvider clock) : FormPage
{
    /// <summary>The lot of the shipment.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<ShipmentLot> Id { get; set; }

    [BindProperty]
    public ReceiptForm Input { get; set; } = new();

    /// <summary>Taken where it was received; they stand among the attachments of the arrival.</summary>
    [BindProperty]
    public List<IFormFile> Photographs { get; set; } = [];

    public string Hint => rules.Hint;

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
        foreach (var photograph in Photographs)
        {
            var file = await rules.ReadAsync(photograph, User.Person(), clock.GetUtcNow(), cancellationToken);
            db.AddRange(file, new Attachment(PapersOf.Arrival, arrival.Id.Value, file, User.Person(), clock.GetUtcNow()));
        }

        await db.SaveChangesAsync(cancellationToken);
        Say("Received. Draw its sample and cup it blind beside the approved one; more photographs go among the attachments below.");
        return RedirectToPage("Arrival", new { arrival.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Shipment = await db.Shipments.AsNoTracking().Whole().SingleOrDefaultAsync(one => one.Lots.Any(lot => lot.Id == Id), cancellationToken);
        Lot = Shipment?.Lots.Single(lot => lot.Id == Id);
        LotName = await db.Lots.Where(lot => Lot != null && lot.Id == Lot.LotId).Select(lot => lot.Ref + " " + lot.Name).SingleOrDefaultAsync(cancellationToken) ?? "";
    }
}
