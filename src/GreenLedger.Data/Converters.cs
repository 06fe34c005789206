using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace GreenLedger.Data;

/// <summary>An identity is stored as its UUID.</summary>
internal sealed class IdConverter<T>() : ValueConverter<Id<T>, Guid>(id => id.Value, value => new Id<T>(value));

/// <summary>A currency is stored as its ISO 4217 code.</summary>
internal sealed class CurrencyConverter()
    : ValueConverter<Currency, string>(currency => currency.Code, code => Read(code))
{
    private static Currency Read(string code) => Currency.TryParse(code, null, out var currency) ? currency : default;
}

/// <summary>
/// A futures month is stored as market, year and month, <c>KC2027-03</c>: readable in a SQL shell and in the order of
/// time within a market.
/// </summary>
internal sealed class FuturesMonthConverter()
    : ValueConverter<FuturesMonth, string>(month => Write(month), text => Read(text))
{
    private static string Write(FuturesMonth month) => string.Create(
        CultureInfo.InvariantCulture, $"{month.Market.Root()}{month.Year:0000}-{month.Month:00}");

    private static FuturesMonth Read(string text) => new(
        text.StartsWith("RC", StringComparison.Ordinal) ? FuturesMarket.Robusta : FuturesMarket.Arabica,
        int.Parse(text.AsSpan(2, 4), CultureInfo.InvariantCulture),
        int.Parse(text.AsSpan(7, 2), CultureInfo.InvariantCulture));
}

/// <summary>Moments are stored in UTC: SQLite then sorts them, and PostgreSQL takes no other offset.</summary>
internal sealed class UtcConverter() : ValueConverter<DateTimeOffset, DateTime>(
    moment => moment.UtcDateTime,
    stored => new DateTimeOffset(DateTime.SpecifyKind(stored, DateTimeKind.Utc)));
