using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Summaries;
using GreenLedger.Documents.Layout;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Summaries;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What was bought and what is open, as the pages show it.</summary>
internal static class SummariesApi
{
    public static void MapSummariesApi(this IEndpointRouteBuilder api)
    {
        var summaries = api.MapGroup("/summaries").WithTags("Summaries");
        summaries.MapBands();
        summaries.MapGet("/purchases", PurchasesAsync).WithName("ReadPurchaseSummary").WithSummary("What was bought in a period, beside the period before, and what is open as it stands.")
            .WithDescription("`from` and `until` are the first and last day, the twelve months that end with this one when left out. `by` parts the purchases by origin, supplier, process, certificate or programme; `of` asks for one group of that. "
                + "Money is in the house currency, rounded row by row; `withoutValue` counts rows whose price or rate is not known.");
        summaries.MapGet("/purchases/rows", RowsAsync).WithName("ListPurchaseRows").WithSummary("The rows behind a figure of the purchase summary.")
            .WithDescription("`figure` is contracted, shipped, arrived, toCome, open, inStock or landed (what arrived, at its cost in the warehouse); `band`, `score`, `month`, `futures` and `before` narrow it as the page does.");
        summaries.MapGet("/position", PositionAsync).WithName("ReadPosition").WithSummary("What is contracted, priced, unpriced and in stock by futures month, and what a move of the markets would do.")
            .WithDescription("`arabica` is a move in US cents/lb, `robusta` in USD/t, below zero for a fall. `perCent` is what the unpriced lots cost more when the market rises by one US cent a pound. Kilograms are shares of the contracted weight; lots and money follow the lots agreed.");
        summaries.MapGet("/suppliers/{id}", SupplierAsync).WithName("ReadSupplierSummary").WithSummary("What was bought of one supplier in a period, and what the supplier kept of what was agreed.")
            .WithDescription("`purchases` is the purchase summary of this supplier alone, `record` what is told of all time.");
        summaries.MapGet("/extracts/{table}", ExtractAsync).WithName("ReadExtract").WithSummary("A whole table of the ledger, as CSV or a workbook")
            .WithDescription("`table` is " + string.Join(", ", ExtractTables.All.Select(one => one.Name)) + "; `format` is csv or xlsx. What an open session seals from the caller is not among them.")
            .Produces(StatusCodes.Status200OK, contentType: TableText.MediaType, additionalContentTypes: TableWorkbook.MediaType);
        summaries.MapPost("/feedback", FeedbackAsync).WithName("WriteFeedback").WithSummary("What a supplier hears back about samples of theirs, in words or as a PDF. Stores nothing.")
            .WithDescription("`language` is en, es, pt or fr; that of the supplier when left out. With `pdf` the answer is the document itself.");
    }

    private static async Task<FileStreamHttpResult> ExtractAsync(
        string table, ExtractQuery query, Reader reader, HouseZone zone, CancellationToken cancellationToken,
        string format = "csv", string? search = null, DateOnly? from = null, DateOnly? until = null)
    {
        Rule.Require(format is "csv" or "xlsx", "Ask for csv or xlsx.", nameof(format));
        var file = new ExtractFile(ExtractTables.Named(table), new ExtractFilter(search, from, until) { Zone = zone.Zone }, format == "xlsx");
        return TypedResults.Stream(await file.WriteAsync(query, await reader.SealAsync(), cancellationToken), file.MediaType, file.NameOn(zone.Today));
    }

    private static async Task<Results<Ok<FeedbackReply>, FileContentHttpResult, NotFound>> FeedbackAsync(
        FeedbackRequest request, LedgerContext db, FeedbackQuery query, Reader reader, HouseZone zone, HttpContext http, CancellationToken cancellationToken)
    {
        var id = new Id<Supplier>(request.SupplierId);
        if (await db.Suppliers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } supplier)
        {
            return TypedResults.NotFound();
        }

        var chosen = (request.SampleIds ?? []).Select(one => new Id<Sample>(one)).Distinct().ToList();
        Rule.Require(chosen.Count is >= 1 and <= FeedbackReport.MostSamples, $"Choose between 1 and {FeedbackReport.MostSamples} samples.", nameof(request.SampleIds));
        var samples = await query.FindAsync(id, chosen, await reader.SealAsync(), cancellationToken);
        Rule.Require(samples.Count == chosen.Count, "A sample is not this supplier's, is not here, or stands on an open table.", nameof(request.SampleIds));
        var house = await db.Houses.AsNoTracking().Select(one => one.Name).SingleAsync(cancellationToken);
        var report = new FeedbackReport(
            house, supplier.Name, request.Language ?? supplier.Language, zone.Today, http.User.PersonName(), Rule.OptionalText(request.Message, "The message", 2000, nameof(request.Message)), samples);
        if (!request.Pdf)
        {
            return TypedResults.Ok(FeedbackReply.Of(report));
        }

        var stream = new MemoryStream();
        FeedbackPdf.Write(report, stream);
        return TypedResults.File(stream.ToArray(), FeedbackPdf.MediaType, report.FileName + ".pdf");
    }

    private static async Task<Results<Ok<PurchaseSummaryReply>, NotFound>> PurchasesAsync(
        PurchaseSummaryQuery query, HouseZone zone, CancellationToken cancellationToken,
        DateOnly? from = null, DateOnly? until = null, Cut by = Cut.Origin, string? of = null)
    {
        var wish = new SummaryAsk { From = from, Until = until, By = by, Of = of }.Wish(zone.Today);
        return await query.FindAsync(wish, zone.Today, cancellationToken) is { } summary ? TypedResults.Ok(PurchaseSummaryReply.Of(summary)) : TypedResults.NotFound();
    }

    private static async Task<Ok<MarketPositionReply>> PositionAsync(
        MarketPositionQuery query, FixingsQuery fixings, HouseZone zone, CancellationToken cancellationToken, decimal arabica = 0m, decimal robusta = 0m)
    {
        var position = await query.FindAsync(cancellationToken);
        var changes = new Dictionary<FuturesMarket, decimal> { [FuturesMarket.Arabica] = arabica, [FuturesMarket.Robusta] = robusta };
        return TypedResults.Ok(MarketPositionReply.Of(position, position.IfMoved(changes, await fixings.QuotesAsync(zone.Today, cancellationToken), zone.Today)));
    }

    private static async Task<Results<Ok<SupplierSummaryReply>, NotFound>> SupplierAsync(
        Id<Supplier> id, LedgerContext db, PurchaseSummaryQuery query, SupplierRecordQuery records, HouseZone zone, CancellationToken cancellationToken, DateOnly? from = null, DateOnly? until = null)
    {
        if (await db.Suppliers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } supplier)
        {
            return TypedResults.NotFound();
        }

        var wish = new SummaryAsk { From = from, Until = until, By = Cut.Supplier, Of = supplier.Name }.Wish(zone.Today);
        var record = SupplierRecord.Of((await records.FactsAsync(cancellationToken)).Where(source => source.Supplier == id));
        return await query.FindAsync(wish, zone.Today, cancellationToken) is { } summary
            ? TypedResults.Ok(new SupplierSummaryReply(id.Value, supplier.Name, PurchaseSummaryReply.Of(summary), SupplierRecordsApi.RecordReply.Of(record)))
            : TypedResults.NotFound();
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
