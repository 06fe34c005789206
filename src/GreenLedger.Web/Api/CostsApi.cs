using GreenLedger.Data;
using GreenLedger.Data.Costs;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.Costs;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Invoices and charges, what lots truly cost, and what the stock is worth.</summary>
internal static class CostsApi
{
    private const int MostPostings = 1_000;

    public static void MapCostsApi(this IEndpointRouteBuilder api)
    {
        var costs = api.MapGroup("/costs").WithTags("Costs");
        costs.MapGet("/postings", ListAsync).WithName("ListPostings").WithSummary("Postings, the latest invoice first; at most 1,000");
        costs.MapPost("/postings", PostAsync).WithName("PostInvoice").WithSummary("Posts an invoice on a contract, a shipment or a lot")
            .WithDescription("Leave `stage` out for the coffee itself. An amount below zero is a credit. It is converted at the rate of its day. For storage, `coversFrom` and `coversUntil` say which days are billed: those before a lot landed are accounting cost.");
        costs.MapGet("/postings/{id}", FindAsync).WithName("ReadPosting").WithSummary("A posting with the lots that share in it and their parts");
        costs.MapPost("/postings/{id}/withdraw", WithdrawAsync).WithName("WithdrawPosting").WithSummary("Withdraws a posting with a reason; it stays on record");
        costs.MapGet("/lots/{id}", LotAsync).WithName("ReadLotCost").WithSummary("What a lot truly cost, beside what was estimated, and what of it fell on coffee already gone");
        costs.MapGet("/value", ValueAsync).WithName("ReadStockValue").WithSummary("What the stock was worth at the end of a day, and the late bills for coffee already gone")
            .WithDescription("`late` holds what bills from `since` up to `on` put on kilograms that were gone by the day of the bill; without `since` all of them.");
    }

    private static async Task<Ok<List<PostingReply>>> ListAsync(PostingQuery query, CancellationToken cancellationToken, string? search = null) =>
        TypedResults.Ok((await query.ListAsync(search, null, 0, MostPostings, cancellationToken)).Select(row => PostingReply.Of(row.Posting)).ToList());

    private static async Task<Results<Ok<SharedPostingReply>, NotFound>> FindAsync(Id<CostPosting> id, PostingQuery query, LotCostQuery costs, CancellationToken cancellationToken) =>
        await query.FindAsync(id, cancellationToken) is { } row
            ? TypedResults.Ok(new SharedPostingReply(PostingReply.Of(row.Posting), [.. (await costs.SharesAsync(row.Posting, cancellationToken)).Select(PostingShareReply.Of)]))
            : TypedResults.NotFound();

    private static async Task<Ok<PostingReply>> PostAsync(PostingRequest request, LedgerContext db, PostingActs acts, HttpContext http, CancellationToken cancellationToken)
    {
        Rule.Require(Currency.TryParse(request.Currency, null, out var currency), "Name a currency by its ISO 4217 code.", nameof(request.Currency));
        Rule.Require(request.Amount is > -1_000_000_000m and < 1_000_000_000m, "The amount lies below a thousand million.", nameof(request.Amount));
        var on = new PostedOn(
            request.ContractId is { } contract ? new Id<Contract>(contract) : null,
            request.ShipmentId is { } shipment ? new Id<Shipment>(shipment) : null,
            request.LotId is { } lot ? new Id<Lot>(lot) : null);
        var posting = await acts.PostAsync(on, request.Stage, Money.Exactly(request.Amount, currency, nameof(request.Amount)), request.On, request.Document, request.From, request.Basis, CoveredDays.Of(request.CoversFrom, request.CoversUntil), http.User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(PostingReply.Of(posting));
    }

    private static async Task<Results<Ok<PostingReply>, NotFound>> WithdrawAsync(Id<CostPosting> id, WithdrawRequest request, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        var posting = await db.CostPostings.SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        if (posting is null)
        {
            return TypedResults.NotFound();
        }

        posting.Withdraw(request.Reason, http.User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(PostingReply.Of(posting));
    }

    private static async Task<Results<Ok<LotCostReply>, NotFound>> LotAsync(Id<Lot> id, LedgerContext db, LotCostQuery query, CancellationToken cancellationToken) =>
        await db.Lots.AnyAsync(lot => lot.Id == id, cancellationToken) ? TypedResults.Ok(LotCostReply.Of(await query.FindAsync(id, cancellationToken))) : TypedResults.NotFound();

    private static async Task<Ok<ValueReply>> ValueAsync(ValuationQuery query, HouseZone house, CancellationToken cancellationToken, DateOnly? on = null, DateOnly? since = null)
    {
        var day = on ?? house.Today;
        return TypedResults.Ok(ValueReply.Of(day, since, await query.FindAsync(day, cancellationToken)));
    }
}
