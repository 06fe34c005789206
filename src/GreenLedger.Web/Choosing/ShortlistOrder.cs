using GreenLedger.Domain.Choosing;

namespace GreenLedger.Web.Choosing;

/// <summary>The orders in which ranked lots can be read; the ranks stay what they are.</summary>
internal static class ShortlistOrder
{
    public static readonly IReadOnlyList<(string Key, string Word)> Choices =
    [
        ("rank", "rank"),
        ("ref", "reference"),
        ("-score", "score, highest first"),
        ("cost", "landed cost, lowest first"),
        ("point", "cost per point, lowest first"),
        ("-best", "chance of being the best"),
        ("-three", "chance of the first three"),
        ("difference", "price against predicted, cheapest first"),
        ("process", "process"),
        ("-quantity", "quantity, largest first"),
    ];

    /// <summary>By the column that the address names, a minus turning it round; by rank for anything else.</summary>
    public static IEnumerable<ShortlistEntry> Of(IReadOnlyList<ShortlistEntry> ranked, string? sort) => (sort?.TrimStart('-')) switch
    {
        "rank" => Sorted(ranked, sort, entry => entry.Rank),
        "ref" => Sorted(ranked, sort, entry => entry.Candidate.Ref, StringComparer.Ordinal),
        "score" => Sorted(ranked, sort, entry => entry.Score!.Value.Score),
        "cost" => Sorted(ranked, sort, entry => entry.Candidate.CostPerKilogram!.Value),
        "point" => Sorted(ranked, sort, entry => entry.CostPerPoint ?? double.MaxValue),
        "best" => Sorted(ranked, sort, entry => entry.Chance?.Best ?? 0),
        "three" => Sorted(ranked, sort, entry => entry.Chance?.FirstThree ?? 0),
        "difference" => Sorted(ranked, sort, entry => entry.PriceCheck?.Difference ?? double.MaxValue),
        "process" => Sorted(ranked, sort, entry => entry.Candidate.Process ?? "", StringComparer.Ordinal),
        "quantity" => Sorted(ranked, sort, entry => entry.Candidate.Quantity.Micrograms),
        _ => ranked,
    };

    private static IEnumerable<ShortlistEntry> Sorted<T>(
        IEnumerable<ShortlistEntry> ranked, string? sort, Func<ShortlistEntry, T> key, IComparer<T>? comparer = null) =>
        sort!.StartsWith('-') ? ranked.OrderByDescending(key, comparer) : ranked.OrderBy(key, comparer);
}
