using System.Globalization;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Arrivals;

/// <summary>A lot of a shipment as it was received: bags, landed net weight and condition.</summary>
public sealed class Arrival
{
    private readonly List<EarlierReceipt> _earlier = [];

    private Arrival()
    {
    }

    /// <exception cref="RuleBrokenException">It has not sailed, the figures cannot be, or more came than was shipped and nobody says why.</exception>
    public Arrival(Shipment shipment, Id<ShipmentLot> shipmentLotId, Receipt receipt, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        var lot = shipment.Lots.FirstOrDefault(one => one.Id == shipmentLotId);
        Rule.Require(lot is not null, $"Shipment {shipment.Ref} does not carry this lot.", nameof(ShipmentLotId));
        RequireAfterSailing(shipment, receipt);
        Id = Id<Arrival>.New();
        (ShipmentId, ShipmentLotId, LotId) = (shipment.Id, lot.Id, lot.LotId);
        (ShippedBags, Shipped) = (lot.Bags, lot.Net);
        (By, At) = (by, at);
        Take(receipt);
    }

    public Id<Arrival> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Shipment> ShipmentId { get; private set; }

    public Id<ShipmentLot> ShipmentLotId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    /// <summary>By the shipping papers, as they stood when it was received.</summary>
    public int ShippedBags { get; private set; }

    /// <summary>Net by the shipping papers, as they stood when it was received.</summary>
    public Weight Shipped { get; private set; }

    public DateOnly ReceivedOn { get; private set; }

    public int Bags { get; private set; }

    /// <summary>Net, as weighed here.</summary>
    public Weight Landed { get; private set; }

    public int WetBags { get; private set; }

    public int TornBags { get; private set; }

    public int StainedBags { get; private set; }

    public bool IsInfested { get; private set; }

    public int InfestedBags { get; private set; }

    public string? Odour { get; private set; }

    public int OdourBags { get; private set; }

    public bool? SealIntact { get; private set; }

    /// <summary>Temperature in tenths of a degree; null where nobody read it.</summary>
    public int? TenthsOfCelsius { get; private set; }

    /// <summary>Relative humidity; null where nobody read it.</summary>
    public Percent? Humidity { get; private set; }

    /// <summary>Why more came than was shipped, and whatever else there is to say.</summary>
    public string? Note { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>The approved sample that it is held against; null while nobody chose one.</summary>
    public Id<Sample>? ApprovedSampleId { get; private set; }

    /// <summary>The sample drawn from it.</summary>
    public Id<Sample>? ArrivalSampleId { get; private set; }

    /// <summary>How often the receipt was corrected.</summary>
    public int Corrections { get; private set; }

    /// <summary>The receipt as it stood before each correction, the first one first.</summary>
    public IReadOnlyList<EarlierReceipt> Earlier => _earlier;

    public ReceiptCondition Condition => new(WetBags, TornBags, StainedBags, IsInfested, Odour, SealIntact, InfestedBags, OdourBags);

    /// <summary>As it stands.</summary>
    public Receipt Receipt => new(ReceivedOn, Bags, Landed, Condition, Note, TenthsOfCelsius, Humidity);

    /// <summary>Puts right what was received; how it stood before stays, with the reason.</summary>
    /// <exception cref="RuleBrokenException">There is no reason, nothing changes, or the figures cannot be.</exception>
    public void Correct(Shipment shipment, Receipt receipt, string reason, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        ArgumentNullException.ThrowIfNull(receipt);
        RequireAfterSailing(shipment, receipt);
        var earlier = new EarlierReceipt(_earlier.Count + 1, Receipt, reason, by, at);
        Rule.Require(receipt.Checked(Shipped) != Receipt, "Nothing differs from what stands: change what was wrong.", nameof(Bags));
        Take(receipt);
        _earlier.Add(earlier);
        Corrections = _earlier.Count;
    }

    private void Take(Receipt receipt)
    {
        ArgumentNullException.ThrowIfNull(receipt);
        var found = receipt.Checked(Shipped);
        Rule.Require(
            found.Note is not null || (found.Bags <= ShippedBags && found.Landed <= Shipped),
            string.Create(CultureInfo.InvariantCulture, $"More came than the {ShippedBags} bags and {Shipped.Kilograms:#,0.###} kg that were shipped: say why in the note, or check the figures."),
            nameof(Note));
        (ReceivedOn, Bags, Landed, Note) = (found.On, found.Bags, found.Landed, found.Note);
        (WetBags, TornBags, StainedBags) = (found.Condition.WetBags, found.Condition.TornBags, found.Condition.StainedBags);
        (IsInfested, InfestedBags, Odour, OdourBags) = (found.Condition.IsInfested, found.Condition.InfestedBags, found.Condition.Odour, found.Condition.OdourBags);
        (SealIntact, TenthsOfCelsius, Humidity) = (found.Condition.SealIntact, found.TenthsOfCelsius, found.Humidity);
    }

    private static void RequireAfterSailing(Shipment shipment, Receipt receipt)
    {
        Rule.Require(shipment.ShippedOn is not null, $"Shipment {shipment.Ref} has no day on board yet: write it down first.", nameof(ReceivedOn));
        Rule.Require(receipt.On >= shipment.ShippedOn, "It cannot have been received before it was on board.", nameof(ReceivedOn));
    }

    /// <summary>
    /// The sample that it should be held against: the one approved on record, else the newest pre-shipment sample that nobody refused.
    /// </summary>
    /// <param name="samples">Of the lot, received.</param>
    public static Sample? Approved(Contract contract, Id<Lot> lot, IEnumerable<Sample> samples)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var known = samples.Where(sample => sample.LotId == lot && sample.IsReceived).ToList();
        var approval = contract.Approvals.LastOrDefault(one => one.LotId == lot && one.IsApproval);
        var refused = contract.Approvals.Where(one => !one.IsApproval).Select(one => one.SampleId).ToHashSet();
        return known.Find(sample => sample.Id == approval?.SampleId)
            ?? known.Where(sample => sample.Kind == SampleKind.PreShipment && !refused.Contains(sample.Id)).OrderBy(sample => sample.ReceivedOn).ThenBy(sample => sample.Id.Value).LastOrDefault();
    }

    /// <summary>Says which samples are held against each other.</summary>
    /// <exception cref="RuleBrokenException">They stand for other lots, or are one and the same.</exception>
    public void Compare(Sample? approved, Sample? arrival)
    {
        Rule.Require(approved is null || approved.LotId == LotId, "The approved sample stands for another lot.", nameof(ApprovedSampleId));
        Rule.Require(arrival is null || arrival.LotId == LotId, "The arrival sample stands for another lot.", nameof(ArrivalSampleId));
        Rule.Require(approved is null || arrival is null || approved.Id != arrival.Id, "A sample is not held against itself: choose two.", nameof(ArrivalSampleId));
        (ApprovedSampleId, ArrivalSampleId) = (approved?.Id, arrival?.Id);
    }
}
