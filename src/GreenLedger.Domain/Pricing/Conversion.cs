using System.Globalization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Pricing;

/// <summary>
/// The way from one currency to another by the rates of the two per euro (null for the euro itself, and both null
/// when the currencies are the same). Amounts are multiplied before they are divided, so that nothing is lost on the
/// way: A to B is <c>amount × rate of B / rate of A</c> (handbook, trade 9.4).
/// </summary>
public sealed record Conversion(Currency From, Currency To, ExchangeRate? FromRate, ExchangeRate? ToRate)
{
    private readonly decimal _from = FromRate?.UnitsPerEuro ?? 1m;
    private readonly decimal _to = ToRate?.UnitsPerEuro ?? 1m;

    /// <summary>True when nothing needs converting.</summary>
    public bool IsSame => From == To;

    /// <summary>Units of the second currency for one of the first, unrounded.</summary>
    public decimal Rate => _to / _from;

    /// <summary>The oldest day among the rates used; null when nothing needs converting.</summary>
    public DateOnly? On => (FromRate?.On, ToRate?.On) switch
    {
        ({ } from, { } to) => from < to ? from : to,
        var (from, to) => from ?? to,
    };

    public string Source => string.Join(
        "; ", new[] { FromRate?.Source, ToRate?.Source }.OfType<string>().Distinct(StringComparer.Ordinal));

    /// <summary>Unrounded.</summary>
    public decimal Of(decimal amount) => IsSame ? amount : amount * _to / _from;

    /// <summary>Rounded once, half away from zero, to the second currency's decimals.</summary>
    /// <exception cref="InvalidOperationException">The money is in another currency.</exception>
    public Money Of(Money money)
    {
        if (money.Currency != From)
        {
            throw new InvalidOperationException($"{money.Currency} is not {From}.");
        }

        return IsSame ? money : Money.Of(Of(money.Amount), To);
    }

    /// <summary>In words: <c>1 EUR = 1.16 USD (24 Nov 2026)</c>, one part for each rate used.</summary>
    public string Words() => string.Join(
        ", ", new[] { FromRate, ToRate }.OfType<ExchangeRate>().Select(rate => string.Create(
            CultureInfo.InvariantCulture, $"1 EUR = {rate.UnitsPerEuro:0.########} {rate.Currency} ({rate.On:d MMM yyyy})")));
}
