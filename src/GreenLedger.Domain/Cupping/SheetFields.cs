using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// The fields of a sheet while it is written, by name: <c>mark.flavor</c> holds points, <c>cups.sweetness</c> and
/// <c>bad.taint</c> a word of 0 and 1 with a sign for each cup (1 is a good cup in the first, a bad one in the second),
/// <c>words</c>, <c>defect</c> and <c>note</c> text, <c>strength.acidity</c> an intensity and <c>checks.smell</c> the keys
/// of checked words with commas between, the last two of the descriptive form.
/// </summary>
public static class SheetFields
{
    private const string Mark = "mark.", Cups = "cups.", Bad = "bad.", Strength = "strength.", Checks = "checks.";

    /// <summary>True for the fields that a whole sheet needs.</summary>
    public static bool IsAttribute(string field) =>
        field is not null && (field.StartsWith(Mark, StringComparison.Ordinal) || field.StartsWith(Cups, StringComparison.Ordinal));

    /// <summary>
    /// Refuses a value that its field cannot hold. Empty text clears a field and is always right.
    /// </summary>
    /// <exception cref="RuleBrokenException">No such field, or not a value for it; the field is named.</exception>
    public static void Check(string field, string value, FormRules rules, int cups, DescriptiveRules? descriptive)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(value);
        ArgumentNullException.ThrowIfNull(rules);
        switch (KindOf(field))
        {
            case Mark when Line(rules.Scales, field, Mark) is { } line:
                Rule.Require(value.Length == 0 || (Number(value) is { } points && line.IsMark(points)), string.Create(CultureInfo.InvariantCulture, $"{line.Name}: {value} is not a mark from {line.Lowest:0.##} to {line.Highest:0.##} in steps of {line.Step:0.##}."), field);
                break;
            case Cups when Line(rules.CupCounted, field, Cups) is not null:
            case Bad when rules.Deductions.Any(line => line.Key == field[Bad.Length..]):
                Rule.Require(value.Length == 0 || (value.Length == cups && value.All(cup => cup is '0' or '1')), $"Say 0 or 1 for each of the {cups} cups.", field);
                break;
            case "words":
                _ = Words(value).Select(word => Rule.Text(word, "A descriptor", 60, field)).Count();
                break;
            case "defect":
                _ = Rule.OptionalText(value, "The name of the taint or fault", 60, field);
                break;
            case "note":
                _ = Rule.OptionalText(value, "The note", 2000, field);
                break;
            case Strength or Checks when descriptive is not null:
                Description(new Dictionary<string, string> { [field] = value })?.Check(descriptive);
                break;
            default:
                throw new RuleBrokenException($"A sheet of this form has no field '{field}'.", field);
        }
    }

    /// <summary>The marks of a written sheet; cups about which nothing was said are good, and none is bad.</summary>
    /// <exception cref="RuleBrokenException">Marks are missing: all of them are named.</exception>
    public static SheetMarks Marks(IReadOnlyDictionary<string, string> values, FormRules rules, int cups)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(rules);
        var missing = rules.Scales.Where(line => !values.ContainsKey(Mark + line.Key)).ToList();
        Rule.Require(missing.Count == 0, $"Still without a mark: {string.Join(", ", missing.Select(line => line.Name))}.", missing.FirstOrDefault()?.Key);
        var good = rules.CupCounted.Select(line => values.GetValueOrDefault(Cups + line.Key) ?? new string('1', cups)).ToList();
        var bad = rules.Deductions.Select(line => values.GetValueOrDefault(Bad + line.Key) ?? new string('0', cups)).ToList();
        return new SheetMarks(
            [.. rules.Scales.Select(line => Measures.Mark.Of(Number(values[Mark + line.Key]) ?? 0m))],
            [.. good.Select(Ticked)],
            [.. bad.Select(Ticked)])
        {
            Cups = [.. good, .. bad],
        };
    }

    /// <summary>The fields that a sheet handed in stands for, to be written on after it was opened again.</summary>
    public static IReadOnlyDictionary<string, string> Of(ScoreSheet sheet, FormRules rules, int cups)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(rules);
        var values = new Dictionary<string, string>();
        foreach (var (line, hundredths) in rules.Scales.Zip(sheet.MarkHundredths))
        {
            values[Mark + line.Key] = new Mark(hundredths).Points.ToString("0.##", CultureInfo.InvariantCulture);
        }

        var keys = rules.CupCounted.Select(line => Cups + line.Key).Concat(rules.Deductions.Select(line => Bad + line.Key));
        var counted = sheet.Cups.Count > 0 ? sheet.Cups : sheet.GoodCups.Concat(sheet.DeductedCups).Select(count => new string('1', count).PadRight(cups, '0'));
        foreach (var (key, word) in keys.Zip(counted))
        {
            values[key] = word;
        }

        foreach (var (strength, value) in sheet.Description?.Intensities ?? new Dictionary<string, int>())
        {
            values[Strength + strength] = value.ToString(CultureInfo.InvariantCulture);
        }

        foreach (var (list, words) in sheet.Description?.Picks ?? new Dictionary<string, IReadOnlyList<string>>())
        {
            values[Checks + list] = string.Join(',', words);
        }

        return Texts(values, sheet);
    }

    /// <summary>Words for what was tasted, as they were written with commas between.</summary>
    public static IReadOnlyList<string> Words(string? written) =>
        (written ?? "").Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The descriptive part of what was written; null where there is none.</summary>
    /// <exception cref="RuleBrokenException">An intensity is not a whole number.</exception>
    public static SheetDescription? Description(IReadOnlyDictionary<string, string> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var strengths = values.Where(pair => pair.Key.StartsWith(Strength, StringComparison.Ordinal) && pair.Value.Length > 0)
            .ToDictionary(pair => pair.Key[Strength.Length..], pair => Whole(pair.Key, pair.Value));
        var picks = values.Where(pair => pair.Key.StartsWith(Checks, StringComparison.Ordinal) && pair.Value.Length > 0)
            .ToDictionary(pair => pair.Key[Checks.Length..], pair => Words(pair.Value));
        return strengths.Count + picks.Count == 0 ? null : new SheetDescription(strengths, picks);
    }

    private static Dictionary<string, string> Texts(Dictionary<string, string> values, ScoreSheet sheet)
    {
        foreach (var (field, text) in new[] { ("words", string.Join(", ", sheet.Descriptors)), ("defect", sheet.DefectName), ("note", sheet.Note) })
        {
            if (!string.IsNullOrEmpty(text))
            {
                values[field] = text;
            }
        }

        return values;
    }

    private static string KindOf(string field) => field.IndexOf('.', StringComparison.Ordinal) is > 0 and var dot ? field[..(dot + 1)] : field;

    private static FormLine? Line(IEnumerable<FormLine> lines, string field, string kind) => lines.FirstOrDefault(line => line.Key == field[kind.Length..]);

    private static int Ticked(string word) => word.Count(cup => cup == '1');

    private static decimal? Number(string value) => decimal.TryParse(value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static int Whole(string field, string value)
    {
        Rule.Require(int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var number), $"'{value}' is not an intensity: use a whole number.", field);
        return number;
    }
}
