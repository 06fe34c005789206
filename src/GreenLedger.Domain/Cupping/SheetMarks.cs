using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// What one cupper observed on one sample, in the order of the form: a mark for each scale attribute, good cups for
/// each cup-counted attribute, and cups with each deduction.
/// </summary>
public sealed record SheetMarks(IReadOnlyList<Mark> Marks, IReadOnlyList<int> GoodCups, IReadOnlyList<int> DeductedCups)
{
    /// <summary>
    /// Which cups: a word of 0 and 1 for each cup-counted attribute (1 is a good cup), then for each deduction (1 is a bad
    /// one). Empty where only the number of cups was written down.
    /// </summary>
    public IReadOnlyList<string> Cups { get; init; } = [];

    /// <summary>Everything that keeps these marks from being a sheet of the form, at once, with the attribute's key.</summary>
    public IEnumerable<(string Key, string Message)> Faults(FormRules rules, int cups)
    {
        ArgumentNullException.ThrowIfNull(rules);
        if (!rules.CupCounts.Contains(cups))
        {
            yield return ("cups", $"This form is cupped with {string.Join(", ", rules.CupCounts)} cups a sample, not {cups}.");
        }

        foreach (var (attribute, mark) in rules.Scales.Zip(Marks).Where(pair => !pair.First.IsMark(pair.Second.Points)))
        {
            yield return (attribute.Key, Sentence(attribute, mark));
        }

        foreach (var (attribute, good) in rules.CupCounted.Zip(GoodCups).Where(pair => pair.Second < 0 || pair.Second > cups))
        {
            yield return (attribute.Key, $"{attribute.Name}: {good} of {cups} cups is not possible.");
        }

        foreach (var (deduction, bad) in rules.Deductions.Zip(DeductedCups).Where(pair => pair.Second < 0 || pair.Second > cups))
        {
            yield return (deduction.Key, $"{deduction.Name}: {bad} of {cups} cups is not possible.");
        }

        if (Marks.Count != rules.Scales.Count() || GoodCups.Count != rules.CupCounted.Count() || DeductedCups.Count != rules.Deductions.Count)
        {
            yield return ("marks", "The sheet is not complete: every attribute needs its mark.");
        }

        if (Cups.Count > 0 && !Cups.Select(word => word.Count(cup => cup == '1')).SequenceEqual(GoodCups.Concat(DeductedCups)))
        {
            yield return ("cups", "The single cups do not add up to their number.");
        }
    }

    private static string Sentence(FormLine attribute, Mark mark) =>
        mark.Points < attribute.Lowest || mark.Points > attribute.Highest
            ? FormattableString.Invariant($"{attribute.Name}: {mark} lies outside {attribute.Lowest:0.00} to {attribute.Highest:0.00}.")
            : FormattableString.Invariant($"{attribute.Name}: {mark} is not on a step of {attribute.Step:0.##}; the nearest are {Below(attribute, mark):0.00} and {Below(attribute, mark) + attribute.Step:0.00}.");

    private static decimal Below(FormLine attribute, Mark mark) =>
        attribute.Lowest + Math.Floor((mark.Points - attribute.Lowest) / attribute.Step) * attribute.Step;
}
