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

/// <summary>Moments are stored in UTC: SQLite then sorts them, and PostgreSQL takes no other offset.</summary>
internal sealed class UtcConverter() : ValueConverter<DateTimeOffset, DateTime>(
    moment => moment.UtcDateTime,
    stored => new DateTimeOffset(DateTime.SpecifyKind(stored, DateTimeKind.Utc)));
