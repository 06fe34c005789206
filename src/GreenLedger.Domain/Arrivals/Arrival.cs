using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Arrivals;

/// <summary>How the goods came, as whoever received them saw it.</summary>
/// <param name="SealIntact">Null where nobody looked.</param>
public sealed record ReceiptCondition(int WetBags, int TornBags, int StainedBags, bool IsInfested, string? Odour, bool? SealIntact)
{
    /// <summary>In words, empty when sound.</summary>
    public IEnumerable<string> Faults()
    {
        foreach (var (bags, what) in new[] { (WetBags, "wet"), (TornBags, "torn"), (StainedBags, "stained") })
        {
            if (bags > 0)
            {
                yield return string.Create(CultureInfo.InvariantCulture, $"{bags} {what}");
            }
        }

        if (IsInfested)
        {
            yield return "insects seen";
        }

        if (Odour is not null)
        {
            yield return $"odour: {Odour}";
        }

        if (SealIntact == false)
        {
            yield return "seal broken";
        }
    }
}

/// <summary>A lot of a shipment as it was received: bags, landed net weight and condition.</summary>
public sealed class Arrival
{
    private Arrival()
    {
    }

    /// <exception cref="RuleBrokenException">It has not sailed, the figures cannot be, or more came than was shipped and nobody says why.</exception>
    public Arrival(Shipment shipment, Id<ShipmentLot> shipmentLotId, Receipt receipt, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        var lot = shipment.Lots.FirstOrDefault(one => one.Id == shipmentLotId);
        Rule.Require(lot is not null, $"Shipment {shipment.Ref} does not carry this lot.", nameof(ShipmentLotId));
        Rule.Require(shipment.ShippedOn is not null, $"Shipment {shipment.Ref} has no day on board yet: write it down first.", nameof(ReceivedOn));
        Rule.Require(receipt.On >= shipment.ShippedOn, "It cannot have been received before it was on board.", nameof(ReceivedOn));
        Id = Id<Arrival>.New();
        (ShipmentId, ShipmentLotId, LotId) = (shipment.Id, lot.Id, lot.LotId);
        (ShippedBags, Shipped) = (lot.Bags, lot.Net);
        (By, At) = (by, at);
        Receive(receipt);
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

    public string? Odour { get; private set; }

    public bool? SealIntact { get; private set; }

    /// <summary>Why more came than was shipped, and whatever else there is to say.</summary>
    public string? Note { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>The approved sample that it is held against; null while nobody chose one.</summary>
    public Id<Sample>? ApprovedSampleId { get; private set; }

    /// <summary>The sample drawn from it.</summary>
    public Id<Sample>? ArrivalSampleId { get; private set; }

    public ReceiptCondition Condition => new(WetBags, TornBags, StainedBags, IsInfested, Odour, SealIntact);

    /// <summary>Puts right what was received.</summary>
    /// <exception cref="RuleBrokenException">The figures cannot be, or more came than was shipped and nobody says why.</exception>
    public void Receive(Receipt receipt)
    {
        ArgumentNullException.ThrowIfNull(receipt);
        var condition = receipt.Condition;
        Rule.Require(receipt.Bags is >= 0 and <= 100_000, "The bags lie between 0 and 100,000.", nameof(Bags));
        Rule.Require(receipt.Landed >= Weight.Zero && receipt.Landed <= Shipped * 2, "The landed net weight lies between 0 and twice what was shipped: please check it.", nameof(Landed));
        Rule.Require(new[] { condition.WetBags, condition.TornBags, condition.StainedBags }.All(bags => bags >= 0 && bags <= receipt.Bags), "Of the bags received, none to all are wet, torn or stained.", nameof(WetBags));
        Note = Rule.OptionalText(receipt.Note, "The note", 2000, nameof(Note));
        Rule.Require(
            Note is not null || (receipt.Bags <= ShippedBags && receipt.Landed <= Shipped),
            string.Create(CultureInfo.InvariantCulture, $"More came than the {ShippedBags} bags and {Shipped.Kilograms:#,0.###} kg that were shipped: say why in the note, or check the figures."),
            nameof(Note));
        (ReceivedOn, Bags, Landed) = (receipt.On, receipt.Bags, receipt.Landed);
        (WetBags, TornBags, StainedBags) = (condition.WetBags, condition.TornBags, condition.StainedBags);
        (IsInfested, SealIntact) = (condition.IsInfested, condition.SealIntact);
        Odour = Rule.OptionalText(condition.Odour, "The odour", 100, nameof(Odour));
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

/// <summary>What was found when a lot was received.</summary>
public sealed record Receipt(DateOnly On, int Bags, Weight Landed, ReceiptCondition Condition, string? Note);
