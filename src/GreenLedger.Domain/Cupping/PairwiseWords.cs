using System.Globalization;

namespace GreenLedger.Domain.Cupping;

/// <summary>Says in sentences which samples a panel can tell apart, and how far apart they must lie for it.</summary>
public static class PairwiseWords
{
    /// <param name="names">What to call each sample, in the order of the fit.</param>
    public static IReadOnlyList<string> Of(PairwiseDifferences differences, IReadOnlyList<string> names)
    {
        ArgumentNullException.ThrowIfNull(differences);
        ArgumentNullException.ThrowIfNull(names);
        if (differences.Fitted.Count < 2)
        {
            return ["One sample: there is nothing to tell apart."];
        }

        var connected = differences.Pairs.Count == 0 ? [] : Told(differences, names).Append(Needed(differences));
        return [.. connected, .. Unconnected(differences)];
    }

    private static IEnumerable<string> Told(PairwiseDifferences differences, IReadOnlyList<string> names)
    {
        var told = differences.Pairs.Count(pair => pair.Differ);
        var whole = differences.Parts == 1;
        if (whole && told == differences.Pairs.Count)
        {
            return ["The panel tells every sample from every other."];
        }

        if (differences.Groups.Count == 0)
        {
            return [$"The panel tells {told} of {differences.Pairs.Count} pairs of samples apart; they fall into too many groups to list."];
        }

        return whole && told == 0
            ? ["The panel cannot tell any of these samples from another."]
            : differences.Groups.Select(group => Group(group, names, differences)).Concat(Between(differences, names));
    }

    private static string Group(IReadOnlyList<int> group, IReadOnlyList<string> names, PairwiseDifferences differences)
    {
        var others = differences.Parts == 1 ? "every other sample" : "every sample of its part";
        return group.Count == 1 ? $"{names[group[0]]} is told from {others}." : $"{List(group, names)} cannot be told apart.";
    }

    /// <summary>Samples of several groups: not told from neighbours who are told from each other.</summary>
    private static IEnumerable<string> Between(PairwiseDifferences differences, IReadOnlyList<string> names)
    {
        var shared = differences.Groups.SelectMany(group => group).CountBy(sample => sample).Where(count => count.Value > 1)
            .Select(count => count.Key).OrderByDescending(sample => differences.Fitted[sample]).ToList();
        return shared.Count switch
        {
            0 => [],
            1 => [$"{names[shared[0]]} stands in between: it cannot be told from samples that are told from each other."],
            _ => [$"{List(shared, names)} stand in between: each cannot be told from samples that are told from each other."],
        };
    }

    private static string Needed(PairwiseDifferences differences)
    {
        var (least, most) = differences.Needed()!.Value;
        var invariant = CultureInfo.InvariantCulture;
        var apart = most - least < 0.005 ? string.Create(invariant, $"{most:0.00} points") : string.Create(invariant, $"{least:0.00} to {most:0.00} points, by who cupped them,");
        var error = differences.ErrorFrom == ErrorSource.OwnResidual
            ? $"the error comes from these sheets, with {differences.DegreesOfFreedom.ToString("0", invariant)} degrees of freedom"
            : "the error is the house's repeatability, because these sheets cannot show their own; other cuppers may see it otherwise";
        var pairs = differences.Pairs.Count == 1 ? "the one pair" : $"all {differences.Pairs.Count} pairs together";
        return $"Two samples must lie {apart} apart to be told apart (Tukey's test, 95 % for {pairs}; {error}).";
    }

    private static IEnumerable<string> Unconnected(PairwiseDifferences differences) => differences.Parts == 1
        ? []
        : [$"The table falls into {differences.Parts} parts that no cupper connects: samples of different parts cannot be compared. Cup one sample of each part together to connect them."];

    private static string List(IReadOnlyList<int> samples, IReadOnlyList<string> names) =>
        $"{string.Join(", ", samples.SkipLast(1).Select(sample => names[sample]))} and {names[samples[^1]]}";
}
