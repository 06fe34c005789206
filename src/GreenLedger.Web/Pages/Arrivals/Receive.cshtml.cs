using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.People;
using GreenLedger.Web.Pricing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Receives a lot of a shipment, once.</summary>
public sealed class ReceiveModel(LedgerContext db, ShipmentQuery shipments, TimeProvider clock) : FormPage
{
    /// <summary>The lot of the shipment.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<ShipmentLot> Id { get; set; }

    [BindProperty]
    public ReceiveForm Input { get; set; } = new();

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

        Input = new ReceiveForm { ReceivedOn = clock.Today(), Bags = Lot.Bags };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var shipment = await db.Shipments.Whole().SingleOrDefaultAsync(one => one.Lots.Any(lot => lot.Id == Id), cancellationToken);
        if (shipment is null)
        {
            return NotFound();
        }

        Rule.Require(!await db.Arrivals.AnyAsync(one => one.ShipmentLotId == Id, cancellationToken), "This lot of the shipment is received already.", "");
        var arrival = new Arrival(shipment, Id, Input.Receipt(), User.Person(), clock.GetUtcNow());
        arrival.Compare(await NewestAsync(arrival, SampleKind.PreShipment, cancellationToken), await NewestAsync(arrival, SampleKind.Arrival, cancellationToken));
        db.Add(arrival);
        var contractId = shipment.Lots.Single(lot => lot.Id == Id).ContractId;
        var contract = await db.Contracts.Whole().SingleAsync(one => one.Id == contractId, cancellationToken);
        var (parts, received) = await shipments.PartsAsync([contractId], cancellationToken);
        GoodsReceived.Tell(contract, parts, [.. received, arrival], User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say("Received. Draw its sample next and cup it blind beside the approved one.");
        return RedirectToPage("Arrival", new { arrival.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Shipment = await db.Shipments.AsNoTracking().Whole().SingleOrDefaultAsync(one => one.Lots.Any(lot => lot.Id == Id), cancellationToken);
        Lot = Shipment?.Lots.Single(lot => lot.Id == Id);
        LotName = await db.Lots.Where(lot => Lot != null && lot.Id == Lot.LotId).Select(lot => lot.Ref + " " + lot.Name).SingleOrDefaultAsync(cancellationToken) ?? "";
    }

    private Task<Sample?> NewestAsync(Arrival arrival, SampleKind kind, CancellationToken cancellationToken) => db.Samples
        .Where(sample => sample.LotId == arrival.LotId && sample.Kind == kind && sample.ReceivedOn != null)
        .OrderByDescending(sample => sample.ReceivedOn).ThenByDescending(sample => sample.Id).FirstOrDefaultAsync(cancellationToken);

    public sealed class ReceiveForm
    {
        [Required(ErrorMessage = "Give the day on which it was received.")]
        [Display(Name = "Received on")]
        public DateOnly? ReceivedOn { get; set; }

        [Required(ErrorMessage = "How many bags came?")]
        public int? Bags { get; set; }

        [Required(ErrorMessage = "Weigh it: how many kilograms net?")]
        [Display(Name = "Landed net weight (kg)")]
        public decimal? LandedKg { get; set; }

        [Display(Name = "Wet bags")]
        public int WetBags { get; set; }

        [Display(Name = "Torn bags")]
        public int TornBags { get; set; }

        [Display(Name = "Stained bags")]
        public int StainedBags { get; set; }

        [Display(Name = "Insects")]
        public bool IsInfested { get; set; }

        [Display(Name = "Odour that is not coffee")]
        public string? Odour { get; set; }

        [Display(Name = "Seal")]
        public bool? SealIntact { get; set; }

        public string? Note { get; set; }

        internal Receipt Receipt()
        {
            Rule.Require(LandedKg is >= 0m and <= 1_000_000_000m, "The landed net weight lies at 0 kg or above.", nameof(LandedKg));
            return new Receipt(ReceivedOn!.Value, Bags!.Value, Weight.FromKilograms(LandedKg.Value), new ReceiptCondition(WetBags, TornBags, StainedBags, IsInfested, Odour, SealIntact), Note);
        }
    }
}
