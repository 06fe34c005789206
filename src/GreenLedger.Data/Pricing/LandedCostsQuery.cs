using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Pricing;

/// <summary>Loads what landed costs of a day are reckoned from: the house currency, routes, rates and quotes.</summary>
public sealed class LandedCostsQuery(LedgerContext db)
{
    /// <summary>Made ready once for as many parcels as there are. Null while no house is set up.</summary>
    public async Task<LandedCosts?> FindAsync(DateOnly on, CancellationToken cancellationToken)
    {
        var house = await db.Houses.AsNoTracking().SingleOrDefaultAsync(cancellationToken);
        if (house is null)
        {
            return null;
        }

        var routes = await db.Routes.InUse().Whole().AsNoTracking().ToListAsync(cancellationToken);
        var rates = await db.ExchangeRates.HoldingOn(RateKind.Market, on).AsNoTracking().ToListAsync(cancellationToken);
        var quotes = await db.FuturesQuotes.HoldingOn(on).AsNoTracking().ToListAsync(cancellationToken);
        return new LandedCosts(
            house.Currency, on, routes, new ExchangeRates(rates), new FuturesQuotes(quotes), house.LongYearCurrencies);
    }
}
