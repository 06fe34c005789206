using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.Reading;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Web.Cupping;

/// <summary>Turns marks by name into the marks of a form; any usual word for an attribute is understood.</summary>
internal static class SheetInput
{
    /// <exception cref="RuleBrokenException">A name is not of the form, an attribute is missing, or points fit no cups.</exception>
    public static SheetMarks Read(
        FormRules rules,
        IReadOnlyDictionary<string, decimal>? marks,
        IReadOnlyDictionary<string, int>? goodCups,
        IReadOnlyDictionary<string, int>? deductedCups,
        int cups)
    {
        var points = Named(rules, rules.Attributes.Select(line => line.Key), marks);
        var good = Named(rules, rules.CupCounted.Select(line => line.Key), goodCups);
        var bad = Named(rules, rules.Deductions.Select(line => line.Key), deductedCups);
        return new SheetMarks(
            [.. rules.Scales.Select(line => MarkOf(line, points))],
            [.. rules.CupCounted.Select(line => good.TryGetValue(line.Key, out var count) ? count : CupsOf(line, points, cups))],
            [.. rules.Deductions.Select(line => bad.GetValueOrDefault(line.Key))]);
    }

    /// <summary>Averages over cuppers, one for every attribute; deductions are still counted in cups.</summary>
    public static SheetTotal Averages(FormRules rules, IReadOnlyDictionary<string, decimal>? marks, IReadOnlyDictionary<string, int>? deductedCups)
    {
        var points = Named(rules, rules.Attributes.Select(line => line.Key), marks);
        var bad = Named(rules, rules.Deductions.Select(line => line.Key), deductedCups);
        var missing = rules.Attributes.FirstOrDefault(line => line.MarkedBy == MarkedBy.Scale && !points.ContainsKey(line.Key));
        Rule.Require(missing is null, $"{missing?.Name} is missing.", missing?.Key);
        return SheetTotal.OfAverages(
            rules,
            [.. rules.Attributes.Select(line => points.GetValueOrDefault(line.Key, line.Highest))],
            [.. rules.Deductions.Select(line => bad.GetValueOrDefault(line.Key) * line.PointsPerCup)]);
    }

    private static Mark MarkOf(FormLine line, Dictionary<string, decimal> points)
    {
        Rule.Require(points.ContainsKey(line.Key), $"{line.Name} is missing.", line.Key);
        var value = points[line.Key];
        Rule.Require(value is >= 0m and <= 100m && value * 100m % 1m == 0m, string.Create(CultureInfo.InvariantCulture, $"{line.Name}: {value} is not a mark; a mark has at most two decimals."), line.Key);
        return Mark.Of(value);
    }

    /// <summary>Every cup is good where nothing was said.</summary>
    private static int CupsOf(FormLine line, Dictionary<string, decimal> points, int cups)
    {
        if (!points.TryGetValue(line.Key, out var value))
        {
            return cups;
        }

        var good = Math.Round(value * cups / FormLine.PointsPerCups);
        Rule.Require(
            Math.Abs(good * FormLine.PointsPerCups / cups - value) < 0.01m,
            string.Create(CultureInfo.InvariantCulture, $"{line.Name}: {value} points is no whole number of {cups} cups."),
            line.Key);
        return decimal.ToInt32(good);
    }

    private static Dictionary<string, T> Named<T>(FormRules rules, IEnumerable<string> keys, IReadOnlyDictionary<string, T>? values)
    {
        var known = keys.ToList();
        var named = new Dictionary<string, T>();
        foreach (var (name, value) in values ?? new Dictionary<string, T>())
        {
            var key = Key(name, known);
            Rule.Require(key is not null, $"This form has no '{name}': it has {string.Join(", ", rules.Attributes.Select(line => line.Key))}.", name);
            Rule.Require(named.TryAdd(key, value), $"'{name}' is given twice.", name);
        }

        return named;
    }

    /// <summary><c>cleanCup</c>, <c>clean_cup</c> and <c>Clean cup</c> are all <c>clean-cup</c>.</summary>
    private static string? Key(string name, List<string> known)
    {
        var words = string.Concat(name.Select(sign => char.IsUpper(sign) ? " " + sign : sign.ToString()));
        var folded = SearchText.Of(words);
        return known.Find(key => SearchText.Of(key) == folded || SearchText.Of(key).Replace(" ", "", StringComparison.Ordinal) == folded.Replace(" ", "", StringComparison.Ordinal))
            ?? (ResultWords.Whole(words) ?? ResultWords.Whole(name)) switch
            {
                "fragrance" or "aroma" or "fragrance-aroma" when known.Contains("fragrance-aroma") => "fragrance-aroma",
                { } meaning when known.Contains(meaning) => meaning,
                _ => null,
            };
    }
}
