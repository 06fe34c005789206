using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Route = GreenLedger.Domain.Pricing.Route;

namespace GreenLedger.Web.Api;

/// <summary>Reckons without storing anything.</summary>
internal static class PricingCalculators
{
    [StoresNothing]
    public static async Task<Ok<LandedCostReply>> LandedCostAsync(
        LandedCostRequest request, LedgerContext db, HouseZone zone, TimeProvider clock, CancellationToken cancellationToken)
    {
        var on = request.On ?? zone.Today;
        var house = await db.Houses.AsNoTracking().SingleOrDefaultAsync(cancellationToken);
        var currency = request.HouseCurrency is { } code ? Currency.Of(code) : house?.Currency ?? Currency.Eur;
        var route = await RouteAsync(request, db, cancellationToken);
        var costs = new LandedCosts(
            currency,
            on,
            await db.Routes.InUse().Whole().AsNoTracking().ToListAsync(cancellationToken),
            await RatesAsync(request, db, on, clock.GetUtcNow(), cancellationToken),
            await QuotesAsync(request, db, on, clock.GetUtcNow(), cancellationToken),
            house?.LongYearCurrencies ?? new HashSet<Currency> { Currency.Gbp });
        var parcel = request.Parcel(on);
        return TypedResults.Ok(LandedCostReply.Of(route is null ? costs.Of(parcel) : costs.Of(parcel, route)));
    }

    /// <summary>Null for the ledger's best route.</summary>
    private static async Task<Route?> RouteAsync(LandedCostRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (request.Route is not null || request.RouteName is not { } name)
        {
            return request.Route?.Route();
        }

        var route = await db.Routes.Whole().AsNoTracking().SingleOrDefaultAsync(route => route.Name == name, cancellationToken);
        Rule.Require(route is not null, $"There is no route called '{name}'.", nameof(request.RouteName));
        return route;
    }

    /// <summary>A currency that is given comes from the request alone, the others from the ledger.</summary>
    private static async Task<ExchangeRates> RatesAsync(
        LandedCostRequest request, LedgerContext db, DateOnly on, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var given = (request.Rates ?? []).Where(rate => rate.Kind == RateKind.Market)
            .Select(rate => new ExchangeRate(Currency.Of(rate.Currency), rate.On, rate.UnitsPerEuro, rate.Source ?? "the request", null, at)).ToList();
        var stored = await db.ExchangeRates.HoldingOn(RateKind.Market, on).AsNoTracking().ToListAsync(cancellationToken);
        return new ExchangeRates(given.Concat(stored.Where(rate => !given.Exists(other => other.Currency == rate.Currency))));
    }

    private static async Task<FuturesQuotes> QuotesAsync(
        LandedCostRequest request, LedgerContext db, DateOnly on, DateTimeOffset at, CancellationToken cancellationToken)
    {
        var given = (request.Quotes ?? [])
            .Select(quote => new FuturesQuote(PricingRequests.Month(quote.Month, on), quote.On, quote.Quoted, quote.Source ?? "the request", null, at)).ToList();
        var stored = await db.FuturesQuotes.HoldingOn(on).AsNoTracking().ToListAsync(cancellationToken);
        return new FuturesQuotes(given.Concat(stored.Where(quote => !given.Exists(other => other.Month == quote.Month))));
    }
}
