using GreenLedger.Domain.Grading;

namespace GreenLedger.Domain.Arrivals;

/// <summary>One physical limit held against the arrival, with what the approved sample showed beside it.</summary>
/// <param name="Name">What was measured.</param>
/// <param name="Approved">On the approved sample; null where it was not measured.</param>
/// <param name="Found">On the arrival; null where it was not measured.</param>
/// <param name="Limit">In words: <c>8 to 12.5 %</c>.</param>
/// <param name="Passed">Null where the arrival was not measured.</param>
/// <param name="IsAgreed">The contract names the limit; else it is the house's own.</param>
public sealed record LimitVerdict(string Name, string? Approved, string? Found, string Limit, bool? Passed, bool IsAgreed = false);

/// <summary>An arrival beside the approved sample: the cup by its verdict, and each measured value by its own limit.</summary>
/// <param name="Cup">Null where the two were not cupped.</param>
public sealed record ArrivalVerdict(QualityVerdict? Cup, IReadOnlyList<LimitVerdict> Limits)
{
    /// <summary>
    /// Short where the cup is short or a limit is not kept, undecided where the cup is, else it matches. What was not measured
    /// counts for neither side.
    /// </summary>
    public ArrivalOutcome Outcome =>
        Cup?.Outcome == ArrivalOutcome.Short || Limits.Any(limit => limit.Passed == false) ? ArrivalOutcome.Short
        : Cup?.Outcome ?? (Limits.Any(limit => limit.Passed == true) ? ArrivalOutcome.Matches : ArrivalOutcome.Undecided);

    /// <summary>What the outcome rests on, in one sentence.</summary>
    public string Sentence
    {
        get
        {
            var broken = Limits.Where(limit => limit.Passed == false).Select(limit => $"{limit.Name.ToLowerInvariant()} ({limit.Found}, limit {limit.Limit})").ToList();
            var cup = Cup is null ? [] : new[] { "the cup" };
            return Outcome switch
            {
                ArrivalOutcome.Short => $"The arrival is short of what was agreed in {List([.. Cup?.Outcome == ArrivalOutcome.Short ? cup : [], .. broken])}.",
                ArrivalOutcome.Matches => Cup is null ? "The arrival keeps every limit that was measured; it was not cupped beside the approved sample." : "The arrival matches the approved sample, and every limit that was measured is kept.",
                _ => Cup is null ? "Nothing was cupped or measured yet." : "The cup is undecided; every limit that was measured is kept.",
            };
        }
    }

    /// <param name="limits">Agreed in the contract, or the house's own.</param>
    /// <param name="approved">The approved sample's grade; null where it was not graded.</param>
    /// <param name="arrival">The arrival's grade; null where it was not graded.</param>
    /// <param name="agreed">The names of the limits that the contract sets.</param>
    public static ArrivalVerdict Of(QualityVerdict? cup, PhysicalLimits limits, GreenGrade? approved, GreenGrade? arrival, IReadOnlySet<string>? agreed = null)
    {
        ArgumentNullException.ThrowIfNull(limits);
        var before = approved is null ? [] : limits.Check(approved).ToDictionary(check => check.Name, check => check.Found);
        var after = arrival is null ? [] : limits.Check(arrival).ToList();
        return new ArrivalVerdict(cup, [.. after.Select(check => new LimitVerdict(check.Name, before.GetValueOrDefault(check.Name), check.Found, check.Limit, check.Passed, agreed?.Contains(check.Name) == true))]);
    }

    private static string List(IReadOnlyList<string> names) =>
        names.Count == 1 ? names[0] : $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}";
}
