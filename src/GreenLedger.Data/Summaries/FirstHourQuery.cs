using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Summaries;

/// <summary>What the ledger holds so far, for the first page: which steps of the first hour are done.</summary>
public sealed class FirstHourQuery(LedgerContext db)
{
    public async Task<FirstHour> FindAsync(CancellationToken cancellationToken) => new(
        await db.Houses.Select(house => house.Name).SingleOrDefaultAsync(cancellationToken) ?? "GreenLedger",
        await db.Routes.CountAsync(cancellationToken),
        await db.FuturesQuotes.CountAsync(cancellationToken) + await db.ExchangeRates.CountAsync(cancellationToken),
        await db.OfferLists.CountAsync(cancellationToken),
        await db.Offers.CountAsync(cancellationToken),
        await db.Lots.CountAsync(cancellationToken),
        await db.SampleResults.Select(result => result.SampleId).Distinct().CountAsync(cancellationToken),
        await db.BuyingRules.CountAsync(cancellationToken),
        await db.Decisions.CountAsync(cancellationToken));
}
