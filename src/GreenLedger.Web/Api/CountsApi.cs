using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Stock counts: begin, write down a lot, approve, give up.</summary>
internal static class CountsApi
{
    private const int Most = 100;

    public static void MapCountsApi(this IEndpointRouteBuilder stock)
    {
        var counts = stock.MapGroup("/counts");
        counts.MapGet("", ListAsync).WithName("ListCounts").WithSummary("The last 100 counts");
        counts.MapGet("/{id}", FindAsync).WithName("FindCount").WithSummary("A count with its lots: what the ledger said, what was counted, and the difference");
        counts.MapPost("", BeginAsync).WithName("BeginCount").WithSummary("Begins a count of a warehouse with what the ledger says");
        counts.MapPut("/{id}/lines/{lineId}", WriteAsync).WithName("CountLot").WithSummary("Writes down what was counted of a lot");
        counts.MapPost("/{id}/found", AddFoundAsync).WithName("AddFoundLot").WithSummary("Adds a lot that lies there and not by the ledger, by its reference or id; it becomes a gain when the count is approved");
        counts.MapPost("/{id}/approval", ApproveAsync).WithName("ApproveCount").WithSummary("Adds the differences to the ledger as losses and gains");
        counts.MapPost("/{id}/end", DropAsync).WithName("GiveUpCount").WithSummary("Gives an open count up; the ledger stays as it is");
    }

    private static async Task<Ok<List<CountReply>>> ListAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        var counts = await db.StockCounts.AsNoTracking().Whole().OrderByDescending(count => count.On).ThenByDescending(count => count.Id).Take(Most).ToListAsync(cancellationToken);
        return TypedResults.Ok(await RepliesAsync(db, counts, cancellationToken));
    }

    private static async Task<Results<Ok<CountReply>, NotFound>> FindAsync(Id<StockCount> id, LedgerContext db, CancellationToken cancellationToken) =>
        await ReplyAsync(db, await db.StockCounts.AsNoTracking().Whole().SingleOrDefaultAsync(count => count.Id == id, cancellationToken), cancellationToken);

    private static async Task<Results<Ok<CountReply>, NotFound>> BeginAsync(CountRequest request, LedgerContext db, CountActs acts, HttpContext http, CancellationToken cancellationToken) =>
        await SavedAsync(db, await acts.BeginAsync(new Id<Warehouse>(request.WarehouseId), request.On, http.User.Person(), cancellationToken), cancellationToken);

    private static async Task<Results<Ok<CountReply>, NotFound>> WriteAsync(Id<StockCount> id, Id<CountLine> lineId, CountLineRequest request, LedgerContext db, HttpContext http, CancellationToken cancellationToken)
    {
        var count = await OpenAsync(db, id, cancellationToken);
        Rule.Require(request.WeighedKg is >= 0m and <= 100_000_000m, "The weight lies between 0 and 100,000,000 kg.", nameof(request.WeighedKg));
        count?.Count(lineId, request.Bags, Weight.FromKilograms(request.WeighedKg), request.Reason, http.User.Person());
        return await SavedAsync(db, count, cancellationToken);
    }

    private static async Task<Results<Ok<CountReply>, NotFound>> AddFoundAsync(Id<StockCount> id, FoundLot found, LedgerContext db, CountActs acts, HttpContext http, CancellationToken cancellationToken)
    {
        var count = await OpenAsync(db, id, cancellationToken);
        if (count is not null)
        {
            await acts.FindAsync(count, found, http.User.Person(), cancellationToken);
        }

        return await SavedAsync(db, count, cancellationToken);
    }

    private static async Task<Results<Ok<CountReply>, NotFound>> ApproveAsync(Id<StockCount> id, LedgerContext db, CountActs acts, HttpContext http, CancellationToken cancellationToken)
    {
        var count = await OpenAsync(db, id, cancellationToken);
        if (count is not null)
        {
            await acts.ApproveAsync(count, http.User.Person(), cancellationToken);
        }

        return await SavedAsync(db, count, cancellationToken);
    }

    private static async Task<Results<Ok<CountReply>, NotFound>> DropAsync(Id<StockCount> id, CountEndRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var count = await OpenAsync(db, id, cancellationToken);
        count?.Drop(request.Reason);
        return await SavedAsync(db, count, cancellationToken);
    }

    private static Task<StockCount?> OpenAsync(LedgerContext db, Id<StockCount> id, CancellationToken cancellationToken) =>
        db.StockCounts.Whole().SingleOrDefaultAsync(count => count.Id == id, cancellationToken);

    private static async Task<Results<Ok<CountReply>, NotFound>> SavedAsync(LedgerContext db, StockCount? count, CancellationToken cancellationToken)
    {
        await db.SaveChangesAsync(cancellationToken);
        return await ReplyAsync(db, count, cancellationToken);
    }

    private static async Task<Results<Ok<CountReply>, NotFound>> ReplyAsync(LedgerContext db, StockCount? count, CancellationToken cancellationToken) =>
        count is null ? TypedResults.NotFound() : TypedResults.Ok((await RepliesAsync(db, [count], cancellationToken))[0]);

    private static async Task<List<CountReply>> RepliesAsync(LedgerContext db, List<StockCount> counts, CancellationToken cancellationToken)
    {
        var holdings = counts.SelectMany(count => count.Lines).Select(line => line.HoldingId).Distinct().ToList();
        var lots = await db.Holdings.Where(holding => holdings.Contains(holding.Id))
            .Join(db.Lots, holding => holding.LotId, lot => lot.Id, (holding, lot) => new { holding.Id, LotId = lot.Id, lot.Ref })
            .ToDictionaryAsync(one => one.Id, one => (one.LotId.Value, one.Ref), cancellationToken);
        return counts.ConvertAll(count => new CountReply(
            count.Id.Value, count.WarehouseId.Value, count.On, count.ApprovedAt, count.DroppedBecause,
            [.. count.Lines.Select(line => new CountLineReply(
                line.Id.Value, lots[line.HoldingId].Value, lots[line.HoldingId].Ref, line.BookBags, line.Book.Kilograms, line.CountedBags, line.Counted?.Kilograms, line.Difference?.Kilograms, line.Reason))]));
    }

    internal sealed record CountRequest(Guid WarehouseId, DateOnly On);

    internal sealed record CountLineRequest(int Bags, decimal WeighedKg, string? Reason = null);

    internal sealed record CountEndRequest(string Reason);

    /// <summary>Counted less book is the difference; nothing where the lot is not counted yet.</summary>
    internal sealed record CountLineReply(Guid Id, Guid LotId, string LotRef, int BookBags, decimal BookKg, int? CountedBags, decimal? CountedKg, decimal? DifferenceKg, string? Reason);

    internal sealed record CountReply(Guid Id, Guid WarehouseId, DateOnly On, DateTimeOffset? ApprovedAt, string? GivenUpBecause, IReadOnlyList<CountLineReply> Lines);
}
