using System.Globalization;
using System.Text.RegularExpressions;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>The unit of a column of weights or quantities.</summary>
public enum WeightUnit
{
    Kilogram = 0,
    Pound = 1,

    /// <summary>The quintal of 46 kg.</summary>
    Quintal46 = 2,
    Tonne = 3,

    /// <summary>A count of bags, each as heavy as another column or the list says.</summary>
    Bags = 4,
}

public static class WeightUnits
{
    public static string Word(this WeightUnit unit) => unit switch
    {
        WeightUnit.Kilogram => "kg",
        WeightUnit.Pound => "lb",
        WeightUnit.Quintal46 => "quintals of 46 kg",
        WeightUnit.Tonne => "t",
        WeightUnit.Bags => "bags",
        _ => throw new ArgumentOutOfRangeException(nameof(unit)),
    };
}

/// <summary>Reads quantities from text: "big bag 1000 kg", "saca 30 kg vácuo", "320 x 60 kg", "42,000 lb".</summary>
internal static partial class QuantityText
{
    public static Weight Of(decimal figure, WeightUnit unit) => unit switch
    {
        WeightUnit.Pound => Weight.FromPounds(figure),
        WeightUnit.Quintal46 => Weight.FromKilograms(figure * 46m),
        WeightUnit.Tonne => Weight.FromKilograms(figure * 1000m),
        _ => Weight.FromKilograms(figure),
    };

    /// <summary>The weight that a packaging names: 60 kg of "saca 60 kg juta".</summary>
    public static Weight? PerBag(string text) => Amount(WithUnit().Match(text), NumberRange.BagWeight);

    /// <summary>The unit that a heading names: kg of "Gewicht kg/Sack", lb of "Net lbs".</summary>
    public static WeightUnit? UnitOf(string heading)
    {
        var match = UnitAlone().Match(heading);
        return match.Success ? Unit(match.Value) : null;
    }

    /// <summary>
    /// A count times a weight, a weight alone, or a count of bags; null where the text is none of these. A single bag
    /// named with its weight is one bag.
    /// </summary>
    public static Packing? Read(string text, bool isBigBag)
    {
        var product = CountTimesWeight().Match(text);
        if (product.Success && Count(product.Groups["count"].Value) is { } count && Amount(product, NumberRange.BagWeight) is { } each)
        {
            return new Packing(count, each, null);
        }

        if (WithUnit().Match(text) is { Success: true } weight)
        {
            return isBigBag
                ? new Packing(1, Amount(weight, NumberRange.BagWeight), null)
                : new Packing(null, null, Amount(weight, NumberRange.Quantity));
        }

        var bags = CountOfBags().Match(text);
        return bags.Success && Count(bags.Groups["count"].Value) is { } only ? new Packing(only, null, null) : null;
    }

    private static Weight? Amount(Match match, NumberRange range) =>
        match.Success && NumberText.Read(match.Groups["amount"].Value, range) is { } amount && amount < 1_000_000_000m
            ? Of(amount, Unit(match.Groups["unit"].Value)) : null;

    private static int? Count(string text) =>
        NumberText.Read(text, NumberRange.Bags) is { } count && count == Math.Truncate(count) && count <= 1_000_000m
            ? decimal.ToInt32(count) : null;

    private static WeightUnit Unit(string word) => char.ToLower(word[0], CultureInfo.InvariantCulture) switch
    {
        'l' or 'p' => WeightUnit.Pound,
        'q' => WeightUnit.Quintal46,
        'b' or 's' => WeightUnit.Bags,
        't' or 'm' => WeightUnit.Tonne,
        _ => WeightUnit.Kilogram,
    };

    [GeneratedRegex(@"(?<amount>\d{1,3}(?:[ \u00A0\u202F]\d{3})+(?:[.,]\d+)?|\d[\d.,]*)\s*-?\s*(?<unit>kgs?|kilos?|lbs?|libras?|pounds?|qq|quintal\w*|mt|t|tons?|tonnes?)(?![\p{L}])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WithUnit();

    [GeneratedRegex(@"^\s*(?<count>\d[\d.,]*)\s*(?:[x×*@]|\p{L}[\p{L}\s-]*?)\s*(?<amount>\d[\d.,]*)\s*(?<unit>kgs?|kilos?|lbs?|libras?|pounds?)(?![\p{L}])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CountTimesWeight();

    [GeneratedRegex(@"^\s*(?<count>\d[\d.,]*)\s*(?:bags?|sacos?|sacas?|sacs?|säcke|sack|bolsas?|boxes|box|cartons?|caixas?|cajas?)\s*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CountOfBags();

    [GeneratedRegex(@"(?<![\p{L}])(?:kgs?|kilos?|lbs?|libras?|pounds?|qq|quintal\w*|mt|tons?|tonnes?|tonelad\w*|bags|sacos|sacas|sacs|säcke)(?![\p{L}])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex UnitAlone();
}
