using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Choosing;

/// <summary>
/// One offer with everything that a ranking asks about it: the coffee, what its samples scored, what was found on the
/// green beans and what it costs in the warehouse. A fact that nobody measured is null, never zero.
/// </summary>
public sealed class Candidate
{
    public required Id<Offer> OfferId { get; init; }

    public required Id<Lot> LotId { get; init; }

    public required string Ref { get; init; }

    public required string Name { get; init; }

    public string? Supplier { get; init; }

    /// <summary>ISO 3166-1 alpha-2; null while no list has said it.</summary>
    public string? Origin { get; init; }

    public Id<ProcessMethod>? ProcessMethodId { get; init; }

    /// <summary>The method's word, or the word as the list wrote it.</summary>
    public string? Process { get; init; }

    /// <summary>Net weight on offer; zero while it is not stated.</summary>
    public Weight Quantity { get; init; }

    public string? CropYear { get; init; }

    public IReadOnlyList<string> Certificates { get; init; } = [];

    /// <summary>Every result of the lot's samples, on any form, in no order.</summary>
    public CupScore[] Results { get; init; } = [];

    /// <summary>What the seller says it scores: never ours.</summary>
    public Score? StatedScore { get; init; }

    public Percent? Moisture { get; init; }

    public WaterActivity? WaterActivity { get; init; }

    public FullDefects? Category1 { get; init; }

    public FullDefects? Category2 { get; init; }

    /// <summary>Share kept by the screen that the rules ask for; null when not sieved or not asked.</summary>
    public Percent? Retained { get; init; }

    public int? Quakers { get; init; }

    /// <summary>Landed cost of one kilogram in the house currency, not rounded; null when a figure is missing.</summary>
    public decimal? CostPerKilogram { get; init; }

    /// <summary>Why there is no landed cost, in a sentence that names the figure; null when there is one.</summary>
    public string? CostProblem { get; init; }
}
