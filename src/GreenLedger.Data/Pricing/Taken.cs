using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Pricing;

/// <summary>
/// Puts rates and quotes into the ledger over what it has for the same days; the caller saves. Pages and API share it.
/// </summary>
public static class Taken
{
    public static async Task<RateTaking> TakeAsync(
        this DbSet<ExchangeRate> rates, IReadOnlyList<RateLine> lines, RateKind kind, string source, Id<Person>? by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var (first, last) = (lines.Min(line => line.On), lines.Max(line => line.On));
        var stored = await rates.Where(rate => rate.Kind == kind && rate.On >= first && rate.On <= last).ToListAsync(cancellationToken);
        var taking = RateTaking.Of(lines, stored, kind, source, by, at);
        rates.AddRange(taking.Added);
        return taking;
    }

    public static async Task<QuoteTaking> TakeAsync(
        this DbSet<FuturesQuote> quotes, IReadOnlyList<QuoteLine> lines, string source, Id<Person>? by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var (first, last) = (lines.Min(line => line.On), lines.Max(line => line.On));
        var stored = await quotes.Where(quote => quote.On >= first && quote.On <= last).ToListAsync(cancellationToken);
        var taking = QuoteTaking.Of(lines, stored, source, by, at);
        if (taking.Problems.Count == 0)
        {
            quotes.AddRange(taking.Added);
        }

        return taking;
    }

    /// <summary>Adds the rate of the day, or corrects the one that is there.</summary>
    public static async Task<ExchangeRate> StateAsync(
        this DbSet<ExchangeRate> rates, RateKind kind, Currency currency, DateOnly on, decimal unitsPerEuro, string source, Id<Person>? by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        if (await rates.Of(kind, currency, on).SingleOrDefaultAsync(cancellationToken) is { } stored)
        {
            stored.Correct(unitsPerEuro, source, by, at);
            return stored;
        }

        var rate = new ExchangeRate(currency, on, unitsPerEuro, source, by, at, kind);
        rates.Add(rate);
        return rate;
    }

    /// <summary>Adds the quote of the day, or corrects the one that is there.</summary>
    public static async Task<FuturesQuote> StateAsync(
        this DbSet<FuturesQuote> quotes, FuturesMonth month, DateOnly on, decimal quoted, string source, Id<Person>? by, DateTimeOffset at, CancellationToken cancellationToken)
    {
        if (await quotes.SingleOrDefaultAsync(quote => quote.Month == month && quote.On == on, cancellationToken) is { } stored)
        {
            stored.Correct(quoted, source, by, at);
            return stored;
        }

        var added = new FuturesQuote(month, on, quoted, source, by, at);
        quotes.Add(added);
        return added;
    }
}
