using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// A price as it was quoted: an amount of a currency for a unit of weight, kept exactly to the millionth and never
/// rounded on the way. <see cref="NanosPerKilogram"/> is the same price per kilogram to the thousand-millionth, kept so
/// that a database can sort and compare prices of different units. Make one with <see cref="Of"/>. The
/// <c>default</c> is no price.
/// </summary>
public readonly record struct PricePerWeight(long Millionths, Currency Currency, PriceUnit Unit, long NanosPerKilogram)
    : IComparable<PricePerWeight>, IParsable<PricePerWeight>
{
    private const decimal Million = 1_000_000m;
    private const decimal Largest = 1_000_000_000m;

    public decimal Amount => Millionths / Million;

    /// <summary>The same price for one kilogram, at full decimal precision.</summary>
    public decimal PerKilogram => Amount / Unit.Weight().Kilograms;

    /// <summary>The same price for one pound, at full decimal precision.</summary>
    public decimal PerPound => Amount * PriceUnit.Pound.Weight().Kilograms / Unit.Weight().Kilograms;

    /// <exception cref="RuleBrokenException">The price is too large to be one of coffee.</exception>
    public static PricePerWeight Of(decimal amount, Currency currency, PriceUnit unit)
    {
        Rule.Require(Math.Abs(amount) <= Largest, "This price is too large: please check the amount and its unit.", "Price");
        var millionths = decimal.ToInt64(Math.Round(amount * Million, 0, MidpointRounding.AwayFromZero));
        var perKilogram = millionths / Million / unit.Weight().Kilograms;
        Rule.Require(Math.Abs(perKilogram) <= Largest, "This price is too large: please check the amount and its unit.", "Price");
        var nanos = decimal.ToInt64(Math.Round(perKilogram * 1_000_000_000m, 0, MidpointRounding.AwayFromZero));
        return new PricePerWeight(millionths, currency, unit, nanos);
    }

    /// <summary>US cents per pound, the unit of the arabica market: 412.50 is 4.125 USD/lb.</summary>
    public static PricePerWeight FromCentsPerPound(decimal cents) => Of(cents / 100m, Currency.Usd, PriceUnit.Pound);

    /// <summary>What the weight costs at this price, rounded once to the currency's decimals.</summary>
    public static Money operator *(PricePerWeight price, Weight weight) =>
        Money.Of(price.Amount * weight.Kilograms / price.Unit.Weight().Kilograms, price.Currency);

    public static bool operator <(PricePerWeight left, PricePerWeight right) => left.CompareTo(right) < 0;

    public static bool operator <=(PricePerWeight left, PricePerWeight right) => left.CompareTo(right) <= 0;

    public static bool operator >(PricePerWeight left, PricePerWeight right) => left.CompareTo(right) > 0;

    public static bool operator >=(PricePerWeight left, PricePerWeight right) => left.CompareTo(right) >= 0;

    public int CompareTo(PricePerWeight other) =>
        Currency == other.Currency
            ? PerKilogram.CompareTo(other.PerKilogram)
            : throw new InvalidOperationException($"{Currency} and {other.Currency} cannot be compared without a rate.");

    /// <summary>As the trade writes it: <c>321.65 ¢/lb</c> for dollars per pound, else <c>9.09 EUR/kg</c>; no decimal is lost.</summary>
    public string AsQuoted() => Unit == PriceUnit.Pound && Currency == Currency.Usd
        ? (Amount * 100m).ToString("#,0.00####", CultureInfo.InvariantCulture) + " ¢/lb"
        : Amount.ToString("#,0.00####", CultureInfo.InvariantCulture) + " " + Currency.Code + "/" + Unit.Sign();

    /// <summary>Invariant form: <c>"4.125 USD/lb"</c>.</summary>
    public override string ToString() =>
        Amount.ToString("0.######", CultureInfo.InvariantCulture) + " " + Currency.Code + "/" + Unit.Sign();

    public static PricePerWeight Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var price) ? price : throw new FormatException($"'{s}' is not a price.");

    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out PricePerWeight result)
    {
        result = default;
        var slash = s?.IndexOf('/') ?? -1;
        if (slash < 0)
        {
            return false;
        }

        var left = s![..slash].Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var sign = s[(slash + 1)..].Trim();
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        if (left.Length != 2
            || !decimal.TryParse(left[0], style, CultureInfo.InvariantCulture, out var amount)
            || !Currency.TryParse(left[1], null, out var currency)
            || Math.Abs(amount) > Largest)
        {
            return false;
        }

        foreach (var unit in Enum.GetValues<PriceUnit>())
        {
            if (unit.Sign() == sign)
            {
                result = Of(amount, currency, unit);
                return true;
            }
        }

        return false;
    }
}
