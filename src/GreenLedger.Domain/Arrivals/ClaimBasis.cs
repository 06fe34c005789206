using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Arrivals;

/// <summary>Whether what was found shows a ground, and the finding or what is missing in a sentence.</summary>
public sealed record GroundFinding(ClaimGround Ground, bool IsShown, string Sentence);

/// <summary>Everything that a claim on an arrival is opened from: both verdicts, the papers, and the contract as it stands.</summary>
/// <param name="Samples">Of the lot; the two that were compared are among them.</param>
/// <param name="Papers">Photographs and documents on the arrival, its shipment, its contract and its two samples, none that were removed.</param>
public sealed record ClaimBasis(
    Arrival Arrival,
    Shipment Shipment,
    Contract Contract,
    Lot Lot,
    WeightVerdict Weight,
    ArrivalVerdict Quality,
    CupEvidence? Evidence,
    IReadOnlyList<Sample> Samples,
    IReadOnlyList<Attachment> Papers)
{
    /// <summary>In which the contract is paid.</summary>
    public Currency Currency => Contract.Terms.Price.Outright?.Currency ?? Contract.Position?.Market.Price(1m).Currency ?? Currency.Usd;

    /// <summary>Days on board after the shipment period; 0 when in time.</summary>
    public int DaysLate => Shipment.DaysLate(Contract.Terms.Delivery.ShipUntil) ?? 0;

    /// <summary>Every ground, in their order.</summary>
    public IReadOnlyList<GroundFinding> Findings => [Cup(), Limits(), Lost(), Faults(), Late()];

    /// <summary>What is known to have happened that starts days of claims.</summary>
    public IReadOnlyDictionary<ClaimEvent, DateOnly> Happened => ClaimTimes.Happened(Shipment);

    private GroundFinding Cup() => Quality.Cup switch
    {
        { Outcome: ArrivalOutcome.Short } cup => new(ClaimGround.Cup, true, cup.Sentences[0]),
        { Outcome: ArrivalOutcome.Matches } => new(ClaimGround.Cup, false, "The cup matches what was approved: there is nothing to claim."),
        { } => new(ClaimGround.Cup, false, "The cup is undecided, which supports no claim: cup both blind in one session with more cuppers first."),
        _ => new(ClaimGround.Cup, false, "The arrival was not cupped beside the approved sample: do that first."),
    };

    private GroundFinding Limits()
    {
        var broken = Quality.Limits.Where(limit => limit.Passed == false).Select(limit => $"{limit.Name}: {limit.Found}, {(limit.IsAgreed ? "agreed" : "not named in the contract, usual")} {limit.Limit}").ToList();
        return broken.Count > 0 ? new(ClaimGround.PhysicalLimits, true, string.Join("; ", broken) + ".")
            : new(ClaimGround.PhysicalLimits, false, Quality.Limits.Any(limit => limit.Passed == true) ? "Every limit that was measured is kept." : "The arrival's sample was not graded: do that first.");
    }

    private GroundFinding Lost() => new(ClaimGround.Weight, Weight.IsShort, (Weight with { Agreed = null }).Sentences[^1]);

    private GroundFinding Faults()
    {
        var faults = Arrival.Condition.Faults().ToList();
        return faults.Count > 0
            ? new(ClaimGround.Condition, true, $"Received {string.Join(", ", faults)}.")
            : new(ClaimGround.Condition, false, "The goods came sound.");
    }

    private GroundFinding Late() => DaysLate > 0
        ? new(ClaimGround.Lateness, true, $"On board {DaysLate} {(DaysLate == 1 ? "day" : "days")} after the shipment period.")
        : new(ClaimGround.Lateness, false, "It was on board in time.");
}
