using GreenLedger.Data.Summaries;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using GreenLedger.Web.Summaries;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>What was bought and what is open, as the pages show it.</summary>
internal static class SummariesApi
{
    public static void MapSummariesApi(this IEndpointRouteBuilder api)
    {
        var summaries = api.MapGroup("/summaries").WithTags("Summaries");
        summaries.MapGet("/purchases", PurchasesAsync).WithName("ReadPurchaseSummary").WithSummary("What was bought in a period, beside the period before, and what is open as it stands.")
            .WithDescription("`from` and `until` are the first and last day, the twelve months that end with this one when left out. `by` parts the purchases by origin, supplier, process or certificate; `of` asks for one group of that. "
                + "Money is in the house currency, rounded row by row; `withoutValue` counts rows whose price or rate is not known.");
        summaries.MapGet("/purchases/rows", RowsAsync).WithName("ListPurchaseRows").WithSummary("The rows behind a figure of the purchase summary.")
            .WithDescription("`figure` is contracted, shipped, arrived, toCome or open; `band`, `score`, `month`, `futures` and `before` narrow it as the page does.");
    }

    private static async Task<Results<Ok<PurchaseSummaryReply>, NotFound>> PurchasesAsync(
        PurchaseSummaryQuery query, HouseZone zone, CancellationToken cancellationToken,
        DateOnly? from = null, DateOnly? until = null, Cut by = Cut.Origin, string? of = null)
    {
        var wish = new SummaryAsk { From = from, Until = until, By = by, Of = of }.Wish(zone.Today);
        return await query.FindAsync(wish, zone.Today, cancellationToken) is { } summary ? TypedResults.Ok(PurchaseSummaryReply.Of(summary)) : TypedResults.NotFound();
    }

    private static async Task<Results<Ok<List<PurchaseRowReply>>, NotFound>> RowsAsync(
        PurchaseSummaryQuery query, HouseZone zone, CancellationToken cancellationToken,
        DateOnly? from = null, DateOnly? until = null, Cut by = Cut.Origin, string? of = null,
        SummaryFigure figure = SummaryFigure.Contracted, string? band = null, int? score = null, DateOnly? month = null, string? futures = null, bool before = false)
    {
        var wish = new SummaryAsk { From = from, Until = until, By = by, Of = of }.Wish(zone.Today);
        var filter = new RowsAsk { Figure = figure, Band = band, Score = score, Month = month, Futures = futures, Before = before }.Filter();
        return await query.FindAsync(wish, zone.Today, cancellationToken) is { } summary
            ? TypedResults.Ok(summary.Rows(filter).Select(PurchaseRowReply.Of).ToList())
            : TypedResults.NotFound();
    }
}
