using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Summaries;

/// <summary>Whose coffee something happened to: who sold it, who grew it, and where; the latter two as far as they are known.</summary>
public sealed record Source(Id<Supplier> Supplier, Id<Producer>? Producer, string? Origin);

/// <summary>Coffees that were offered from one source.</summary>
/// <param name="Bought">Those that a decision to buy stands for.</param>
public sealed record OfferedFact(Source Source, int Offered, int Bought);

/// <summary>Pre-shipment samples of one lot of one contract, in the order of their rounds: true where one was approved.</summary>
public sealed record JudgedFact(Source Source, IReadOnlyList<bool> Rounds);

/// <summary>A part of a contract that went on board.</summary>
/// <param name="DaysLate">After the last day of the shipment period; 0 when in time.</param>
/// <param name="IsUnapproved">Without the approval that the contract asks for.</param>
public sealed record ShippedFact(Source Source, int DaysLate, bool IsUnapproved);

/// <summary>A part that was received.</summary>
public sealed record LandedFact(Source Source, Weight Shipped, Weight Landed);

/// <summary>An arrival that was cupped and the approved sample that it stands against.</summary>
/// <param name="Cup">The difference that the arrival's verdict stands on.</param>
public sealed record CuppedFact(Source Source, Id<Arrival> ArrivalId, string Lot, DateOnly On, CupDifference Cup)
{
    public Score Approved => Score.Of((decimal)Cup.Approved);

    public Score Arrived => Score.Of((decimal)Cup.Arrival);

    /// <summary>Arrival less approved, in points to the millionth; over two sessions with a reference less how far those stood apart.</summary>
    public decimal Difference => Math.Round((decimal)Cup.Points, 6, MidpointRounding.AwayFromZero);
}

/// <summary>A claim on something that was received, or that did not come.</summary>
/// <param name="Outcome">How it ended; null while it is open.</param>
/// <param name="Settled">What the seller paid or credited; null where nothing.</param>
public sealed record ClaimedFact(Source Source, ClaimOutcome? Outcome, Money? Settled, bool IsReceived = true);

/// <summary>A lot that was bought and received before this ledger began: told beside a record, and counted in none of its figures.</summary>
public sealed record BeforeFact(Source Source, Weight Received);

/// <summary>Everything that a record is computed from.</summary>
public sealed record RecordFacts(
    IReadOnlyList<OfferedFact> Offered,
    IReadOnlyList<JudgedFact> Judged,
    IReadOnlyList<ShippedFact> Shipped,
    IReadOnlyList<LandedFact> Landed,
    IReadOnlyList<CuppedFact> Cupped,
    IReadOnlyList<ClaimedFact> Claimed)
{
    public IReadOnlyList<BeforeFact> Before { get; init; } = [];

    /// <summary>Those of some sources alone.</summary>
    public RecordFacts Where(Func<Source, bool> belongs) => new(
        [.. Offered.Where(fact => belongs(fact.Source))],
        [.. Judged.Where(fact => belongs(fact.Source))],
        [.. Shipped.Where(fact => belongs(fact.Source))],
        [.. Landed.Where(fact => belongs(fact.Source))],
        [.. Cupped.Where(fact => belongs(fact.Source))],
        [.. Claimed.Where(fact => belongs(fact.Source))])
    {
        Before = [.. Before.Where(fact => belongs(fact.Source))],
    };

    public IEnumerable<Source> Sources() =>
        Offered.Select(fact => fact.Source).Concat(Judged.Select(fact => fact.Source)).Concat(Shipped.Select(fact => fact.Source))
            .Concat(Landed.Select(fact => fact.Source)).Concat(Cupped.Select(fact => fact.Source)).Concat(Before.Select(fact => fact.Source)).Distinct();
}
