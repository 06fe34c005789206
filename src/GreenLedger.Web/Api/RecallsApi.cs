using GreenLedger.Data;
using GreenLedger.Data.Trace;
using GreenLedger.Documents.Trace;
using GreenLedger.Domain;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Trace;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>What is recalled: `from` and `id` as for a trace.</summary>
internal sealed record RecallRequest(TraceFrom From, Guid Id, string? Reason);

internal sealed record RecallEndRequest(string? Learned);

internal sealed record RecallLineReply(string Kind, Guid Id, string LotRef, string Name, string? Detail, DateOnly? On, decimal WeightKg);

internal sealed record RecallShareReply(string What, decimal WeightKg, decimal Percent);

internal sealed record RecallFindingsReply(IReadOnlyList<string> Lots, decimal ReceivedKg, decimal FoundPercent, IReadOnlyList<RecallShareReply> Shares, IReadOnlyList<RecallLineReply> Lines)
{
    public static RecallFindingsReply Of(RecallFindings found) => new(
        found.Lots, found.Received.Kilograms, found.Found.Points, [.. found.Shares.Select(share => new RecallShareReply(share.What, share.Weight.Kilograms, share.Share.Points))],
        [.. found.Lines.Select(line => new RecallLineReply(line.Kind.ToString(), line.Id, line.LotRef, line.Name, line.Detail, line.On, line.Weight.Kilograms))]);
}

/// <summary>A mock recall; `findings` are frozen once it has ended, and before that as of now where one recall is asked for.</summary>
internal sealed record RecallReply(
    Guid Id, string Ref, string From, Guid StartId, string StartName, string Reason, string? StartedBy, DateTimeOffset StartedAt, string? EndedBy, DateTimeOffset? EndedAt, decimal? Seconds, string? Learned, RecallFindingsReply? Findings)
{
    public static RecallReply Of(RecallRow row, RecallFindings? found) => Of(row.Recall, row.StartedBy, row.EndedBy, found);

    public static RecallReply Of(MockRecall recall, string? startedBy, string? endedBy, RecallFindings? found) => new(
        recall.Id.Value, recall.Ref, recall.From.ToString(), recall.StartId, recall.StartName, recall.Reason, startedBy, recall.StartedAt, endedBy, recall.EndedAt,
        recall.Took is { } took ? (decimal)took.TotalSeconds : null, recall.Learned, found is null ? null : RecallFindingsReply.Of(found));
}

/// <summary>Mock recalls.</summary>
internal static class RecallsApi
{
    public static void MapRecallsApi(this RouteGroupBuilder trace)
    {
        trace.MapGet("/recalls", ListAsync).WithName("ListMockRecalls").WithSummary("Mock recalls that were held, the newest first").WithDescription(OfferRowsApi.Pages);
        trace.MapGet("/recalls/{id}", FindAsync).WithName("FindMockRecall").WithSummary("A mock recall with what it found");
        trace.MapGet("/recalls/{id}/report", ReportAsync).WithName("ReadMockRecallReport").WithSummary("The report of a mock recall, a PDF: as found when it ended, before that as of now");
        trace.MapPost("/recalls", StartAsync).WithName("StartMockRecall").WithSummary("Starts the clock of a mock recall");
        trace.MapPost("/recalls/{id}/end", EndAsync).WithName("EndMockRecall").WithSummary("Stops the clock and freezes what is found");
    }

    private static async Task<Ok<PageReply<RecallReply>>> ListAsync(RecallQuery query, CancellationToken cancellationToken, int page = 1, int size = Paging.UsualSize)
    {
        var paging = OfferRowsApi.PageOf(page, size, await query.CountAsync(cancellationToken));
        return TypedResults.Ok(PageReply<RecallReply>.Of(paging, (await query.ListAsync(paging.Skip, paging.Size, cancellationToken)).Select(row => RecallReply.Of(row, row.Recall.Findings))));
    }

    private static async Task<Results<Ok<RecallReply>, NotFound>> FindAsync(Id<MockRecall> id, RecallQuery query, RecallActs acts, CancellationToken cancellationToken) =>
        await query.FindAsync(id, cancellationToken) is { } row
            ? TypedResults.Ok(RecallReply.Of(row, row.Recall.Findings ?? await acts.FindAsync(row.Recall, cancellationToken)))
            : TypedResults.NotFound();

    private static async Task<Results<FileContentHttpResult, NotFound>> ReportAsync(Id<MockRecall> id, RecallQuery query, RecallActs acts, CancellationToken cancellationToken) =>
        await query.FindAsync(id, cancellationToken) is { } row && await acts.ReportAsync(row, cancellationToken) is { } report
            ? TypedResults.File(report, RecallPdf.MediaType, $"mock recall {row.Recall.Ref}.pdf")
            : TypedResults.NotFound();

    private static async Task<Results<Ok<RecallReply>, NotFound>> StartAsync(RecallRequest request, RecallActs acts, HttpContext http, CancellationToken cancellationToken) =>
        await acts.StartAsync(request.From, request.Id, request.Reason, http.User.Person(), cancellationToken) is { } recall
            ? TypedResults.Ok(RecallReply.Of(recall, null, null, null))
            : TypedResults.NotFound();

    private static async Task<Results<Ok<RecallReply>, NotFound>> EndAsync(Id<MockRecall> id, RecallEndRequest request, RecallActs acts, LedgerContext db, HttpContext http, CancellationToken cancellationToken)
    {
        if (await acts.EndAsync(id, request.Learned, http.User.Person(), cancellationToken) is not { } recall)
        {
            return TypedResults.NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(RecallReply.Of(recall, null, null, recall.Findings));
    }
}
