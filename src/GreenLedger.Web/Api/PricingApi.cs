using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Documents.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Pricing;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;
using Route = GreenLedger.Domain.Pricing.Route;

namespace GreenLedger.Web.Api;

/// <summary>Routes, exchange rates, futures quotes, and the calculator of landed cost.</summary>
internal static class PricingApi
{
    private const int MostRows = 10_000;

    public static void MapPricingApi(this IEndpointRouteBuilder api)
    {
        var pricing = api.MapGroup("/pricing").WithTags("Pricing");
        pricing.MapGet("/routes", RoutesAsync).WithName("ListRoutes").WithSummary("Routes with their legs.");
        pricing.MapGet("/routes/{id}", RouteAsync).WithName("ReadRoute").WithSummary("One route.");
        pricing.MapPost("/routes", AddRouteAsync).WithName("AddRoute").WithSummary("Adds a route; every stage must be answered.");
        pricing.MapPut("/routes/{id}", ChangeRouteAsync).WithName("ChangeRoute").WithSummary("Replaces a route's places, figures and legs.");
        pricing.MapGet("/rates", RatesAsync).WithName("ListRates").WithSummary("Exchange rates, the newest first; at most 10,000.");
        pricing.MapPost("/rates", StateRateAsync).WithName("StateRate").WithSummary("States the rate of a currency and day, or corrects it.");
        pricing.MapPostFile("/rates/import", ImportRatesAsync).WithName("ImportRates").DisableAntiforgery()
            .WithSummary("Takes a file of euro reference rates (XML, CSV, ZIP), from a day on.");
        pricing.MapGet("/quotes", QuotesAsync).WithName("ListQuotes").WithSummary("Futures quotes, the newest first; at most 10,000.");
        pricing.MapPost("/quotes", StateQuoteAsync).WithName("StateQuote").WithSummary("States the quote of a month and day, or corrects it.");
        pricing.MapPostFile("/quotes/import", ImportQuotesAsync).WithName("ImportQuotes").DisableAntiforgery()
            .WithSummary("Takes a text table with month, date and price.");
        pricing.MapPost("/calculate/landed-cost", PricingCalculators.LandedCostAsync).WithName("CalculateLandedCost")
            .WithSummary("A landed cost with every leg. Stores nothing.");
    }

    private static async Task<Ok<List<RouteReply>>> RoutesAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok((await db.Routes.Whole().AsNoTracking().OrderBy(route => route.Name).ToListAsync(cancellationToken)).ConvertAll(RouteReply.Of));

    private static async Task<Results<Ok<RouteReply>, NotFound>> RouteAsync(Id<Route> id, LedgerContext db, CancellationToken cancellationToken) =>
        await db.Routes.Whole().AsNoTracking().SingleOrDefaultAsync(route => route.Id == id, cancellationToken) is { } route
            ? TypedResults.Ok(RouteReply.Of(route))
            : TypedResults.NotFound();

    private static async Task<Created<RouteReply>> AddRouteAsync(RouteRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var route = request.Route();
        route.RequireComplete();
        await db.Routes.RequireFreeNameAsync(route, cancellationToken);
        db.Routes.Add(route);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created($"/api/pricing/routes/{route.Id}", RouteReply.Of(route));
    }

    private static async Task<Results<Ok<RouteReply>, NotFound>> ChangeRouteAsync(
        Id<Route> id, RouteRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.Routes.Whole().SingleOrDefaultAsync(route => route.Id == id, cancellationToken) is not { } route)
        {
            return TypedResults.NotFound();
        }

        request.Onto(route).RequireComplete();
        await db.Routes.RequireFreeNameAsync(route, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(RouteReply.Of(route));
    }

    private static async Task<Ok<List<RateReply>>> RatesAsync(
        LedgerContext db, CancellationToken cancellationToken, string? currency = null, DateOnly? from = null, DateOnly? until = null, RateKind? kind = null)
    {
        var rates = db.ExchangeRates.Between(from, until);
        rates = kind is { } one ? rates.Where(rate => rate.Kind == one) : rates;
        if (currency is not null)
        {
            var code = Currency.Of(currency);
            rates = rates.Where(rate => rate.Currency == code);
        }

        var found = await rates.OrderByDescending(rate => rate.On).ThenBy(rate => rate.Currency).Take(MostRows).AsNoTracking().ToListAsync(cancellationToken);
        return TypedResults.Ok(found.ConvertAll(RateReply.Of));
    }

    private static async Task<Ok<RateReply>> StateRateAsync(
        RateRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var rate = await db.ExchangeRates.StateAsync(
            request.Kind, Currency.Of(request.Currency), request.On, request.UnitsPerEuro, request.Source ?? "typed", http.User.FindPerson(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(RateReply.Of(rate));
    }

    private static async Task<Ok<TakenReply>> ImportRatesAsync(
        IFormFile file, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken, DateOnly? from = null)
    {
        var read = ReferenceRateFile.Read(await file.BytesAsync(ReferenceRateFile.LargestFile, cancellationToken));
        var lines = read.Lines.Where(line => from is null || line.On >= from).ToList();
        if (lines.Count == 0)
        {
            return TypedResults.Ok(new TakenReply(0, 0, 0, [], read.Problems));
        }

        var taking = await db.ExchangeRates.TakeAsync(lines, RateKind.Market, file.SourceName(), http.User.FindPerson(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(new TakenReply(taking.Added.Count, taking.Corrected, taking.Unchanged, taking.UnknownCodes, []));
    }

    private static async Task<Ok<List<QuoteReply>>> QuotesAsync(
        LedgerContext db, HouseZone house, CancellationToken cancellationToken, string? month = null, DateOnly? from = null, DateOnly? until = null)
    {
        var quotes = db.FuturesQuotes.Between(from, until);
        if (month is not null)
        {
            var one = PricingRequests.Month(month, house.Today);
            quotes = quotes.Where(quote => quote.Month == one);
        }

        var found = await quotes.OrderByDescending(quote => quote.On).ThenBy(quote => quote.Month).Take(MostRows).AsNoTracking().ToListAsync(cancellationToken);
        return TypedResults.Ok(found.ConvertAll(QuoteReply.Of));
    }

    private static async Task<Ok<QuoteReply>> StateQuoteAsync(
        QuoteRequest request, LedgerContext db, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        var month = PricingRequests.Month(request.Month, house.Today);
        var quote = await db.FuturesQuotes.StateAsync(
            month, request.On, request.Quoted, request.Source ?? "typed", http.User.FindPerson(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(QuoteReply.Of(quote));
    }

    private static async Task<Ok<TakenReply>> ImportQuotesAsync(
        IFormFile file, LedgerContext db, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        var read = FuturesQuoteTable.Read(await file.BytesAsync(FuturesQuoteTable.LargestFile, cancellationToken), house.Today);
        if (read.Lines.Count == 0)
        {
            return TypedResults.Ok(new TakenReply(0, 0, 0, [], read.Problems));
        }

        var taking = await db.FuturesQuotes.TakeAsync(read.Lines, file.SourceName(), http.User.FindPerson(), clock.GetUtcNow(), cancellationToken);
        if (taking.Problems.Count > 0)
        {
            return TypedResults.Ok(new TakenReply(0, 0, 0, [], taking.Problems));
        }

        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(new TakenReply(taking.Added.Count, taking.Corrected, taking.Unchanged, [], []));
    }
}
