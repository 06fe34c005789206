namespace GreenLedger.Domain.Cupping;

/// <summary>One line of a total: an attribute's points, or a deduction's (shown with its cups).</summary>
public sealed record TotalLine(string Key, string Name, int? Cups, decimal Points);

/// <summary>
/// A sheet's total with the arithmetic behind it. <see cref="Unrounded"/> enters the panel's fit; <see cref="Total"/>
/// is what the form prints. No floor is applied: a heavily faulted sheet keeps its raw value.
/// </summary>
public sealed record SheetTotal(
    IReadOnlyList<TotalLine> Attributes,
    IReadOnlyList<TotalLine> Deductions,
    decimal BeforeDeductions,
    decimal Unrounded,
    decimal Total)
{
    /// <summary>The sheet of one cupper; handbook quality.md sections 1.1 and 1.2.</summary>
    /// <param name="cups">Cups poured; with 3 or 4 a cup-counted attribute is 10 × good ÷ cups (common practice).</param>
    /// <exception cref="RuleBrokenException">The marks are not a sheet of this form; the field is the attribute's key.</exception>
    public static SheetTotal Of(FormRules rules, SheetMarks marks, int cups)
    {
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(marks);
        foreach (var (key, message) in marks.Faults(rules, cups))
        {
            throw new RuleBrokenException(message, key);
        }

        var scale = marks.Marks.GetEnumerator();
        var good = marks.GoodCups.GetEnumerator();
        var attributes = rules.Attributes.Select(attribute => attribute.MarkedBy == MarkedBy.Scale
            ? new TotalLine(attribute.Key, attribute.Name, null, Next(scale).Points)
            : Counted(attribute, Next(good), cups)).ToList();
        var deductions = rules.Deductions.Zip(marks.DeductedCups, (deduction, bad) =>
            new TotalLine(deduction.Key, deduction.Name, bad, Deducted(rules, deduction, bad, cups))).ToList();
        return Sum(rules, attributes, deductions, rounds: true);
    }

    /// <summary>
    /// A past result whose points are averages over cuppers: one number per attribute, on no step, and the points
    /// deducted. The form's rounding belongs to a sheet, so it is applied only where every number is a mark.
    /// </summary>
    /// <exception cref="RuleBrokenException">An average lies outside 0 to the attribute's highest.</exception>
    public static SheetTotal OfAverages(FormRules rules, IReadOnlyList<decimal> points, IReadOnlyList<decimal> deducted)
    {
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(deducted);
        Rule.Require(points.Count == rules.Attributes.Count && deducted.Count == rules.Deductions.Count, "Every attribute needs its points.", "Marks");
        foreach (var (attribute, value) in rules.Attributes.Zip(points).Where(pair => pair.Second < 0m || pair.Second > pair.First.Highest))
        {
            throw new RuleBrokenException(FormattableString.Invariant($"{attribute.Name}: {value:0.####} lies outside 0 to {attribute.Highest:0}."), attribute.Key);
        }

        Rule.Require(deducted.All(value => value is >= 0m and <= 100m), "Points deducted lie between 0 and 100.", "Deductions");
        var attributes = rules.Attributes.Zip(points, (attribute, value) => new TotalLine(attribute.Key, attribute.Name, null, value)).ToList();
        var deductions = rules.Deductions.Zip(deducted, (deduction, value) => new TotalLine(deduction.Key, deduction.Name, null, value)).ToList();
        return Sum(rules, attributes, deductions, rules.Scales.Zip(points).All(pair => pair.First.IsMark(pair.Second)));
    }

    private static TotalLine Counted(FormLine attribute, int good, int cups) =>
        new(attribute.Key, attribute.Name, good, FormLine.PointsPerCups * good / cups);

    private static decimal Deducted(FormRules rules, FormDeduction deduction, int bad, int cups) =>
        deduction.PointsPerCup * bad * (rules.DeductionsPerFiveCups ? FormRules.UsualCups / (decimal)cups : 1m);

    private static SheetTotal Sum(FormRules rules, List<TotalLine> attributes, List<TotalLine> deductions, bool rounds)
    {
        var byKind = attributes.Zip(rules.Attributes).ToLookup(pair => pair.Second.MarkedBy, pair => pair.First.Points);
        var before = rules.Slope * byKind[MarkedBy.Scale].Sum() + byKind[MarkedBy.Cups].Sum() + rules.Intercept;
        var unrounded = before - deductions.Sum(line => line.Points);
        return new SheetTotal(attributes, deductions, before, unrounded, rounds ? Round(unrounded, rules.RoundTo) : unrounded);
    }

    /// <summary>Half up: no published tie rule was found (handbook quality.md section 1.2).</summary>
    private static decimal Round(decimal value, decimal step) =>
        step == 0m ? value : Math.Floor(value / step + 0.5m) * step;

    private static T Next<T>(IEnumerator<T> values)
    {
        values.MoveNext();
        return values.Current;
    }

    /// <summary>What does not forbid the sheet but is probably a slip of the pen.</summary>
    public static IEnumerable<string> Doubts(FormRules rules, SheetMarks marks, int cups)
    {
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(marks);
        var fault = rules.Deductions.ToList().FindIndex(deduction => deduction.Key == "fault");
        var clean = rules.CupCounted.ToList().FindIndex(attribute => attribute.Key == "clean-cup");
        if (fault >= 0 && clean >= 0 && marks.DeductedCups[fault] > cups - marks.GoodCups[clean])
        {
            yield return "A cup with a fault is still counted as clean: usually it is charged as unclean too.";
        }

        var defective = rules.Deductions.ToList().FindIndex(deduction => deduction.Key == "defective");
        var uneven = rules.Deductions.ToList().FindIndex(deduction => deduction.Key == "non-uniform");
        if (defective >= 0 && uneven >= 0 && marks.DeductedCups[defective] > marks.DeductedCups[uneven])
        {
            yield return "A defective cup is usually ticked as non-uniform too.";
        }
    }
}
