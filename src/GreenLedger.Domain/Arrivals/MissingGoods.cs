using System.Globalization;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Arrivals;

/// <summary>A lot of a contract, or the part of it on one shipment, that a claim without an arrival may be opened for.</summary>
/// <param name="Contract">Whole.</param>
/// <param name="Progress">How much of the contract is on board and received.</param>
/// <param name="Line">The lot among them.</param>
/// <param name="Shipment">What it went on board with; null for what never went on board.</param>
/// <param name="Part">What of the lot is on that shipment.</param>
/// <param name="Papers">Photographs and documents on the contract and the shipment, none that were removed.</param>
/// <param name="Notes">On both, none that were removed, the oldest first.</param>
/// <param name="IsReceived">That part was received.</param>
public sealed record MissingGoods(
    Contract Contract, ContractProgress Progress, LotProgress Line, Shipment? Shipment, ShipmentLot? Part, bool IsReceived, IReadOnlyList<Attachment> Papers, IReadOnlyList<NotedOn> Notes)
{
    /// <summary>The coffee, as the contract calls it.</summary>
    public ContractedLot Lot => Contract.Terms.Lots.First(lot => lot.LotId == Line.Lot.LotId);

    public ClaimGround Ground => Shipment is null ? ClaimGround.NotShipped : ClaimGround.NotArrived;

    /// <summary>In which the contract is paid.</summary>
    public Currency Currency => Contract.Terms.Price.Outright?.Currency ?? Contract.Position?.Market.Price(1m).Currency ?? Currency.Usd;

    /// <summary>The contract's price; null while it is not fixed.</summary>
    public PricePerWeight? Price => Contract.Terms.Price.Outright ?? (Contract.Position is { Final: { } final, Market: var market } ? market.Price(final) : null);

    /// <summary>What a claim names it by: the part of a shipment, or else the lot.</summary>
    public Guid Key => Part?.Id.Value ?? Line.Lot.Id.Value;

    public int Bags => Part?.Bags ?? Line.BagsLeft;

    /// <summary>Net weight of what did not come.</summary>
    public Weight Weight => Part?.Net ?? Line.Left;

    /// <summary>Who bears what is lost on the way, where the delivery rule passes the risk before arrival (ICC Incoterms 2020, by handbook, trade 3.1); null elsewhere.</summary>
    public string? Risk => Shipment is not null && Contract.Terms.Delivery.Incoterm is (Incoterm.Fca or Incoterm.Fas or Incoterm.Fob or Incoterm.Cfr or Incoterm.Cif or Incoterm.Cpt or Incoterm.Cip)
        ? $"Under {Contract.Terms.Delivery.Incoterm.Word()} the risk passed before the voyage: what was lost on it is a matter for the insurer and the carrier first."
        : null;

    private DateOnly ShipUntil => Contract.Terms.Delivery.ShipUntil;

    /// <summary>What of a lot was never on board.</summary>
    public static MissingGoods NotShippedOf(Contract contract, ContractProgress progress, LotProgress line) => new(contract, progress, line, null, null, false, [], []);

    /// <summary>By what is written down it should have come by a day: it was never shipped, the ship is discharged, or its planned arrival is past.</summary>
    public bool IsOverdue(DateOnly on) => Shipment is null || IsOverdue(Shipment, on);

    /// <summary>The ship is discharged, or its planned arrival is past.</summary>
    public static bool IsOverdue(Shipment shipment, DateOnly on)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        return shipment.ShippedOn is not null && (shipment.DischargedOn <= on || shipment.PlannedArrival < on);
    }

    /// <exception cref="RuleBrokenException">Nothing is chosen, or nothing that is of this contract.</exception>
    public static MissingGoods Chosen(IEnumerable<MissingGoods> all, Guid? key)
    {
        Rule.Require(key is not null, "Choose what did not come.", "Part");
        var chosen = all.FirstOrDefault(goods => goods.Key == key);
        Rule.Require(chosen is not null, "This is no part of the contract any more: open the page again and choose from the list.", "Part");
        return chosen;
    }

    /// <summary>Whether something did not come by a day, and the finding in a sentence.</summary>
    public GroundFinding Finding(DateOnly on) => Shipment is null ? NotShipped(on) : NotArrived(Shipment, on);

    /// <summary>The days for other claims, from the end of the shipment period for what was not shipped, else from discharge (handbook, trade 4.1); null where the contract names none.</summary>
    public ClaimDeadline? Deadline() => Contract.Terms.Form.OtherClaimDays is not { } days ? null
        : Shipment is { } shipment ? ClaimDeadline.Of(new ClaimRule(ClaimTimes.Other, [ClaimEvent.Discharge], days), ClaimTimes.Happened(shipment))
        : ClaimDeadline.Of(new ClaimRule(ClaimTimes.Other, [ClaimEvent.EndOfShipment], days), new Dictionary<ClaimEvent, DateOnly> { [ClaimEvent.EndOfShipment] = ShipUntil });

    private GroundFinding NotShipped(DateOnly on)
    {
        var refusal = (Contract, Line) switch
        {
            ({ IsSigned: false }, _) => "The contract is not signed: nothing is owed under it yet.",
            ({ Goods: GoodsState.Cancelled }, _) => "The contract is cancelled: nothing is owed under it any more.",
            ({ Goods: GoodsState.Shipped or GoodsState.Arrived or GoodsState.Closed }, _) when Progress.Lots.All(lot => lot.ShippedBags == 0) => "The contract was entered as shipped without a shipment: write the shipment down first.",
            (_, { BagsLeft: 0 } or { Left.Micrograms: 0 }) => $"What is agreed was shipped{(Line.ReceivedBags > 0 ? ": open a claim on what came from its arrival" : "")}.",
            _ => on <= ShipUntil ? $"The shipment period runs until {Said(ShipUntil)}: nothing is missing before it has ended." : null,
        };
        return refusal is not null ? new(ClaimGround.NotShipped, false, refusal) : new(ClaimGround.NotShipped, true, string.Create(
            CultureInfo.InvariantCulture,
            $"{Bags:#,0} of {Line.Lot.Bags:#,0} bags, {ClaimLine.Kg(Weight)} of {ClaimLine.Kg(Line.Lot.Net)}, were not on board when the shipment period ended on {Said(ShipUntil)}."));
    }

    private GroundFinding NotArrived(Shipment shipment, DateOnly on) => (shipment, IsReceived) switch
    {
        (_, true) => new(ClaimGround.NotArrived, false, "This part was received: open the claim from its arrival."),
        ({ ShippedOn: null }, _) => new(ClaimGround.NotArrived, false, "This part has not sailed: what was not shipped in its period is claimed as such."),
        ({ ShippedOn: { } shipped }, _) when shipped > on => new(ClaimGround.NotArrived, false, $"It went on board on {Said(shipped)}: it is not missing before that."),
        _ => new(ClaimGround.NotArrived, true, string.Create(
            CultureInfo.InvariantCulture,
            $"{Bags:#,0} bags, {ClaimLine.Kg(Weight)}, went on board {(shipment.Vessel is { } vessel ? $"{vessel} " : "")}on {Said(shipment.ShippedOn!.Value)}{(shipment.BillOfLading is { } bill ? $", bill of lading {bill}" : "")}, and were not received by {Said(on)}{(shipment.DischargedOn is { } discharged ? $"; the ship was discharged on {Said(discharged)}" : "")}.")),
    };

    internal static string Said(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}

/// <summary>A note on a contract or a shipment, with the day on which it was written.</summary>
public sealed record NotedOn(DateOnly On, PapersOf About, string Text);

/// <summary>What a person decides when a claim on goods that did not come is opened; everything else is gathered by the system.</summary>
/// <param name="On">The day on which it is made.</param>
/// <param name="Market">What such coffee costs that day, for the same weight: the difference to the contract's price is claimed.</param>
/// <param name="ProvisionalPrice">The contract's price, while it is not fixed.</param>
/// <param name="Paid">What was paid against documents for goods that did not come.</param>
/// <param name="OtherWords">What else is claimed, with <paramref name="Other"/>: dead freight.</param>
/// <param name="Words">What else the seller is to read.</param>
/// <param name="LateReason">Why it is made although the deadline is past.</param>
public sealed record MissingOrder(
    DateOnly On,
    PricePerWeight? Market = null,
    PricePerWeight? ProvisionalPrice = null,
    Money? Paid = null,
    string? OtherWords = null,
    Money? Other = null,
    string? Words = null,
    string? LateReason = null);

/// <summary>What was agreed of goods that did not come, as it stood when the claim was opened.</summary>
/// <param name="Bags">That did not come, of <paramref name="AgreedBags"/>.</param>
/// <param name="Delivery">Delivery rule and place.</param>
/// <param name="Versions">Each signed version with its day and, for an amendment, its reason.</param>
/// <param name="Notes">Day and text of what was written down on the contract and the shipment.</param>
public sealed record ClaimMissing(
    int AgreedBags, Weight Agreed, int Bags, Weight Missing, string Delivery, DateOnly ShipFrom, DateOnly ShipUntil, IReadOnlyList<string> Versions, IReadOnlyList<string> Notes);
