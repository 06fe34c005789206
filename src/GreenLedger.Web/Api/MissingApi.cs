using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What of a contract did not come, and claims on it.</summary>
internal static class MissingApi
{
    public static void MapMissing(this RouteGroupBuilder arrivals)
    {
        arrivals.MapGet("/missing/{id}", ListAsync).WithName("ListMissingGoods").WithSummary("What of a contract was not shipped or did not arrive, as of today")
            .WithDescription("Each lot of the contract, and each part of it on a shipment, with what is found; `isMissing` where a claim may be opened on it.");
        arrivals.MapPost("/missing/{id}/claims", OpenAsync).WithName("OpenClaimOnMissingGoods").WithSummary("Opens a claim on goods of a contract that did not come")
            .WithDescription("`part` is one of those that are listed as missing. What was agreed, its amendments and notes, deadline and amount are frozen; a claim after its deadline needs `lateReason` and is flagged as late.");
    }

    private static async Task<Results<Ok<List<MissingReply>>, NotFound>> ListAsync(Id<Contract> id, MissingGoodsQuery query, HouseZone house, CancellationToken cancellationToken) =>
        await query.ListAsync(id, cancellationToken) is { } all ? TypedResults.Ok(all.Select(goods => MissingReply.Of(goods, house.Today)).ToList()) : TypedResults.NotFound();

    private static async Task<Results<Created<ClaimReply>, NotFound>> OpenAsync(
        Id<Contract> id, MissingClaimRequest request, LedgerContext db, MissingGoodsQuery query, HttpContext http, HouseZone house, TimeProvider clock, CancellationToken cancellationToken)
    {
        await using var turn = await db.NumberAsync(cancellationToken);
        if (await query.ListAsync(id, cancellationToken) is not { } all)
        {
            return TypedResults.NotFound();
        }

        var others = await db.Claims.AsNoTracking().Where(claim => claim.ContractId == id).ToListAsync(cancellationToken);
        var claim = Claim.Open(await db.Claims.NextRefAsync(house.Today, cancellationToken), MissingGoods.Chosen(all, request.Part), request.Order(), others, http.User.Person(), clock.GetUtcNow());
        db.Add(claim);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return TypedResults.Created($"/api/arrivals/claims/{claim.Id}", ClaimReply.Of(claim));
    }
}

/// <summary>A claim on goods that did not come.</summary>
/// <param name="Part">As listed under /api/arrivals/missing.</param>
/// <param name="Market">What such coffee costs that day: the difference to the contract's price is claimed.</param>
/// <param name="ProvisionalPrice">The contract's price, while it is not fixed.</param>
/// <param name="Paid">For goods that did not come.</param>
/// <param name="OtherWords">What else is claimed, with <paramref name="Other"/>.</param>
/// <param name="Words">What else the seller is to read.</param>
/// <param name="LateReason">Needed where the deadline is past.</param>
internal sealed record MissingClaimRequest(
    DateOnly On,
    Guid? Part = null,
    PriceRequest? Market = null,
    PriceRequest? ProvisionalPrice = null,
    MoneyRequest? Paid = null,
    string? OtherWords = null,
    MoneyRequest? Other = null,
    string? Words = null,
    string? LateReason = null)
{
    public MissingOrder Order() => new(On, Market?.Price(), ProvisionalPrice?.Price(), Paid?.Money(nameof(Paid)), OtherWords, Other?.Money(nameof(Other)), Words, LateReason);
}

/// <param name="Part">What a claim on it names.</param>
/// <param name="ShipmentId">Null for what was not shipped.</param>
/// <param name="Finding">What is missing, or why no claim can be opened here.</param>
/// <param name="LastDay">Of a claim; null where it is not known.</param>
internal sealed record MissingReply(
    Guid Part, Guid LotId, string LotRef, string LotName, Guid? ShipmentId, string? ShipmentRef, bool IsMissing, ClaimGround Ground, string Finding, int Bags, decimal WeightKg, DateOnly? LastDay)
{
    public static MissingReply Of(MissingGoods goods, DateOnly today)
    {
        var finding = goods.Finding(today);
        return new MissingReply(
            goods.Key, goods.Lot.LotId.Value, goods.Lot.Ref, goods.Lot.Name, goods.Shipment?.Id.Value, goods.Shipment?.Ref, finding.IsShown, finding.Ground, finding.Sentence, goods.Bags, goods.Weight.Kilograms, goods.Deadline()?.LastDay);
    }
}
