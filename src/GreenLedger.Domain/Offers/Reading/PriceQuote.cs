using System.Globalization;
using System.Text.RegularExpressions;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// In what a figure is quoted: the currency, the quantity that it pays for, and whether it counts cents. Either part may
/// be missing when a heading names only one.
/// </summary>
public sealed partial record PriceQuote(string? Currency, PriceUnit? Unit, bool InCents = false)
{
    /// <summary>Whether figures can be turned into prices.</summary>
    public bool IsWhole => Currency is not null && Unit is not null;

    /// <summary>What is missing here is taken from the other.</summary>
    public PriceQuote Or(PriceQuote? other) => other is null ? this : new PriceQuote(
        Currency ?? other.Currency, Unit ?? other.Unit, InCents || (Currency is null && Unit is null && other.InCents));

    /// <summary>The figure as a price, exact: 412.5 in US cents/lb is 4.125 USD/lb.</summary>
    public PricePerWeight Price(decimal figure) =>
        PricePerWeight.Of(InCents ? figure / 100m : figure, Measures.Currency.Of(Currency), Unit ?? PriceUnit.Kilogram);

    /// <summary>As the mapping shows it: <c>US cents/lb</c>, <c>EUR/kg</c>.</summary>
    public override string ToString() =>
        $"{(InCents ? "cents " : "")}{Currency ?? "currency?"}/{Unit?.Sign() ?? "unit?"}";

    /// <summary>
    /// What a coffee may cost in this quote, from 0.30 to 500 US dollars a kilogram (common practice, no source): it only
    /// helps to read thousands marks. No range where the currency is another than the dollar, euro, pound or franc.
    /// </summary>
    internal NumberRange Range()
    {
        if (!IsWhole || Currency is not ("USD" or "EUR" or "GBP" or "CHF"))
        {
            return NumberRange.Any;
        }

        var perUnit = Unit!.Value.Weight().Kilograms * (InCents ? 100m : 1m);
        return new NumberRange(0.3m * perUnit, 500m * perUnit, Unit == PriceUnit.Tonne);
    }

    /// <summary>The first quote that stands in the text, with where it stands; null when there is none.</summary>
    public static (PriceQuote Quote, string Text)? Find(string? text)
    {
        foreach (var match in WholeQuote().Matches(text ?? "").Cast<Match>())
        {
            if (UnitOf(match) is { } unit && CurrencyOf(match.Groups["cur"].Value) is { Code: { } currency } whole)
            {
                return (new PriceQuote(currency, unit, whole.Cents), match.Value);
            }
        }

        var alone = CurrencyAlone().Match(text ?? "");
        return alone.Success && CurrencyOf(alone.Value) is { Code: { } code } found
            ? (new PriceQuote(code, null, found.Cents), alone.Value)
            : null;
    }

    /// <summary>The unit after "per" or a slash where no currency stands before it: of "price per lb".</summary>
    public static PriceUnit? FindUnit(string? text)
    {
        var match = UnitAlone().Match(text ?? "");
        return match.Success ? UnitOf(match) : null;
    }

    private static (string? Code, bool Cents) CurrencyOf(string text)
    {
        var word = text.Replace(" ", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal).ToUpperInvariant();
        return word switch
        {
            "US¢" or "USC" or "USCT" or "USCTS" or "USCENT" or "USCENTS" or "¢" or "C" or "CT" or "CTS" or "CENT" or "CENTS" or "CENTAVOS" or "USDC" or "USDCTS" or "USDCENTS" or "CUSD" => ("USD", true),
            "$" or "US$" or "USD" or "DOLLAR" or "DOLLARS" or "DOLARES" => ("USD", false),
            "€" or "EUR" or "EURO" or "EUROS" => ("EUR", false),
            "£" or "GBP" => ("GBP", false),
            "R$" => ("BRL", false),
            "EURCENT" or "EURCENTS" or "EUROCENT" or "EURCT" => ("EUR", true),
            _ => (Measures.Currency.TryParse(word, null, out var currency) ? currency.Code : null, false),
        };
    }

    private static PriceUnit? UnitOf(Match match)
    {
        var count = match.Groups["n"].Value;
        var currency = match.Groups["cur"].Value;
        var number = count.Length == 0 ? 1m : decimal.Parse(count, NumberStyles.None, CultureInfo.InvariantCulture);
        var first = char.ToLowerInvariant(match.Groups["unit"].Value[0]);
        return (first, number) switch
        {
            ('l' or 'p', 1m) => PriceUnit.Pound,
            ('l' or 'p', 100m) => PriceUnit.Quintal100Pounds,
            ('k', 1m) => PriceUnit.Kilogram,
            ('k', 46m) => PriceUnit.Quintal46,
            ('k', 50m) => PriceUnit.FiftyKilograms,
            ('k', 60m) => PriceUnit.SixtyKilograms,
            ('k', 1000m) => PriceUnit.Tonne,
            ('q', 1m) => PriceUnit.Quintal46,
            ('t' or 'm', 1m) => PriceUnit.Tonne,
            ('s', 1m) => currency.Trim().ToUpperInvariant() is "R$" or "BRL" ? PriceUnit.SixtyKilograms : null,
            _ => null,
        };
    }

    [GeneratedRegex(
        @"(?<![\p{L}])(?<cur>us\s*d?\s*c(?:en)?ts?\.?|us\s*d?\s*cents?|us\s*¢|us\s*c|us\s*\$|r\$|euro?s?|(?:usd|eur|euro)[ -]?c(?:en)?ts?|[a-z]{3}|cents?|cts?\.?|c|[$€£¢])\s*(?:/|per|por|pro|par|je|p\.)\s*(?<n>\d{1,4})?\s*(?<unit>lbs?|libras?|pounds?|livres?|pfund|kgs?|kilos?|kilogram\w*|qq|quintal\w*|mt|tons?|tonnen?|tonnes?|tonelad\w*|t|sacas?)(?![\p{L}])",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex WholeQuote();

    [GeneratedRegex(
        @"(?:/|\bper\b|\bpor\b|\bpro\b|\bpar\b|\bje\b)\s*(?<n>\d{1,4})?\s*(?<unit>lbs?|libras?|pounds?|livres?|pfund|kgs?|kilos?|qq|quintal\w*|mt|tons?|tonnen?|tonnes?|tonelad\w*|t)(?![\p{L}])",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex UnitAlone();

    [GeneratedRegex(@"(?<![\p{L}])(?:US\s*¢|US\$|R\$|USD|EUR|GBP|CHF|BRL|COP|KES|ETB|JPY|AUD|CAD|Euro|[€£¢$])(?![\p{L}])", RegexOptions.CultureInvariant)]
    private static partial Regex CurrencyAlone();
}
