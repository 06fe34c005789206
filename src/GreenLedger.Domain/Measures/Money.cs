using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// An amount of money in the smallest unit of its currency. It is rounded once, half away from zero, when it is made
/// from a price and a weight or from a decimal (commercial rounding; handbook, trade 1.4). Adding two currencies is an
/// error. The <c>default</c> is nothing in no currency.
/// </summary>
public readonly record struct Money(long MinorUnits, Currency Currency) : IComparable<Money>, IParsable<Money>
{
    public decimal Amount => MinorUnits / Scale(Currency);

    /// <summary>Rounded half away from zero to the currency's decimals.</summary>
    public static Money Of(decimal amount, Currency currency) =>
        new(decimal.ToInt64(Math.Round(amount * Scale(currency), 0, MidpointRounding.AwayFromZero)), currency);

    /// <summary>An amount as somebody typed it: nothing of it is rounded away.</summary>
    /// <exception cref="RuleBrokenException">It is finer than the smallest unit of the currency.</exception>
    public static Money Exactly(decimal amount, Currency currency, string field)
    {
        var money = Of(amount, currency);
        Rule.Require(money.Amount == amount, $"An amount in {currency} has at most {currency.Decimals} decimals: write it as it was billed.", field);
        return money;
    }

    public static Money Zero(Currency currency) => new(0, currency);

    /// <summary>
    /// Splits the amount in proportion to the shares by the largest remainder; ties go to the earlier share.
    /// The parts always add up to the whole (handbook, trade 1.4).
    /// </summary>
    /// <exception cref="ArgumentException">There is no share, a share is negative, or all shares are zero.</exception>
    public IReadOnlyList<Money> SplitBy(IReadOnlyList<decimal> shares)
    {
        if (shares.Count == 0 || shares.Any(share => share < 0) || shares.Sum() == 0)
        {
            throw new ArgumentException("Shares must be zero or more, and one must be above zero.", nameof(shares));
        }

        var currency = Currency;
        return [.. LargestRemainder.Split(MinorUnits, shares).Select(part => new Money(part, currency))];
    }

    /// <summary>What falls on the second of two shares, to the smallest unit; a credit is shared like an amount.</summary>
    public Money SecondOf(decimal first, decimal second) => MinorUnits >= 0 ? SplitBy([first, second])[1] : -(-this).SplitBy([first, second])[1];

    public static Money operator +(Money left, Money right) =>
        new(checked(left.MinorUnits + right.MinorUnits), Same(left, right));

    public static Money operator -(Money left, Money right) =>
        new(checked(left.MinorUnits - right.MinorUnits), Same(left, right));

    public static Money operator -(Money money) => money with { MinorUnits = checked(-money.MinorUnits) };

    public static bool operator <(Money left, Money right) => left.CompareTo(right) < 0;

    public static bool operator <=(Money left, Money right) => left.CompareTo(right) <= 0;

    public static bool operator >(Money left, Money right) => left.CompareTo(right) > 0;

    public static bool operator >=(Money left, Money right) => left.CompareTo(right) >= 0;

    public int CompareTo(Money other)
    {
        Same(this, other);
        return MinorUnits.CompareTo(other.MinorUnits);
    }

    /// <summary>Invariant form: <c>"1234.50 USD"</c>.</summary>
    public override string ToString() =>
        Amount.ToString("F" + Currency.Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
        + " " + Currency.Code;

    public static Money Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var money) ? money : throw new FormatException($"'{s}' is not money.");

    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Money result)
    {
        result = default;
        var parts = (s ?? "").Trim().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        if (parts.Length != 2
            || !decimal.TryParse(parts[0], style, CultureInfo.InvariantCulture, out var amount)
            || !Currency.TryParse(parts[1], null, out var currency)
            || Math.Abs(amount) > 9_000_000_000_000_000m)
        {
            return false;
        }

        result = Of(amount, currency);
        return true;
    }

    private static decimal Scale(Currency currency) => currency.Decimals switch { 0 => 1m, 3 => 1000m, _ => 100m };

    private static Currency Same(Money left, Money right) =>
        left.Currency == right.Currency
            ? left.Currency
            : throw new InvalidOperationException($"{left.Currency} and {right.Currency} cannot be mixed without a rate.");
}
