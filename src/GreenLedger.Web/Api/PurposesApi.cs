using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>Purposes, their cover and the year ahead; use by lot.</summary>
internal static class PurposesApi
{
    public static void MapPurposesApi(this IEndpointRouteBuilder stock)
    {
        stock.MapGet("/use", UseAsync).WithName("ListUse").WithSummary("Use of a week and cover of every lot in stock");
        stock.MapGet("/age", AgeAsync).WithName("ReadAgeOfStock").WithSummary("How old each lot in stock is, how its scores and moisture have moved, and the trend of the house with its 95 % interval");
        stock.MapGet("/purposes", ListAsync).WithName("ListPurposes").WithSummary("The purposes in use with stock, use, cover and reorder point");
        stock.MapPost("/purposes", AddAsync).WithName("AddPurpose").WithSummary("Names what the house buys coffee for");
        stock.MapPut("/purposes/{id}", StateAsync).WithName("ChangePurpose").WithSummary("Says a purpose anew");
        stock.MapPost("/purposes/{id}/put-away", PutAwayAsync).WithName("PutPurposeAway").WithSummary("Puts a purpose away; it stays on record");
        stock.MapPost("/purposes/{id}/take-up", TakeUpAsync).WithName("TakePurposeUp").WithSummary("Uses a purpose again that was put away");
        stock.MapPost("/purposes/{id}/lots/{lotId}/end", SpareAsync).WithName("EndServing").WithSummary("Lets a lot serve a purpose no more");
        stock.MapGet("/purposes/{id}/outlook", OutlookAsync).WithName("ReadOutlook").WithSummary("Cover of a purpose by week for a year ahead");
        stock.MapPost("/purposes/{id}/lots", ServeAsync).WithName("ServePurpose").WithSummary("Lets a lot, by its reference, serve a purpose");
    }

    private static async Task<Ok<List<LotUseReply>>> UseAsync(PurposeQuery query, HouseZone house, CancellationToken cancellationToken) =>
        TypedResults.Ok((await query.LotsAsync(house.Today, cancellationToken)).Select(LotUseReply.Of).ToList());

    private static async Task<Ok<AgedStockReply>> AgeAsync(AgedStockQuery query, HouseZone house, CancellationToken cancellationToken) =>
        TypedResults.Ok(AgedStockReply.Of(await query.FindAsync(cancellationToken), house.Today));

    private static async Task<Ok<List<PurposeReply>>> ListAsync(PurposeQuery query, HouseZone house, CancellationToken cancellationToken) =>
        TypedResults.Ok((await query.ListAsync(house.Today, cancellationToken)).Select(row => PurposeReply.Of(row.Purpose, row.Cover)).ToList());

    private static async Task<Created<PurposeIdReply>> AddAsync(PurposeRequest request, LedgerContext db, PurposeActs acts, CancellationToken cancellationToken)
    {
        var purpose = await acts.StateAsync(null, request.Terms(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/stock/purposes", new PurposeIdReply(purpose.Id.Value, purpose.Name));
    }

    private static Task<Results<Ok<PurposeIdReply>, NotFound>> StateAsync(Id<Purpose> id, PurposeRequest request, LedgerContext db, PurposeActs acts, CancellationToken cancellationToken) =>
        ChangeAsync(id, db, purpose => acts.StateAsync(purpose, request.Terms(), cancellationToken), cancellationToken);

    private static Task<Results<Ok<PurposeIdReply>, NotFound>> PutAwayAsync(Id<Purpose> id, LedgerContext db, CancellationToken cancellationToken) =>
        ChangeAsync(id, db, Sync(purpose => purpose.PutAway()), cancellationToken);

    private static Task<Results<Ok<PurposeIdReply>, NotFound>> TakeUpAsync(Id<Purpose> id, LedgerContext db, CancellationToken cancellationToken) =>
        ChangeAsync(id, db, Sync(purpose => purpose.TakeUpAgain()), cancellationToken);

    private static Task<Results<Ok<PurposeIdReply>, NotFound>> SpareAsync(Id<Purpose> id, Id<Lot> lotId, LedgerContext db, CancellationToken cancellationToken) =>
        ChangeAsync(id, db, Sync(purpose => purpose.Spare(lotId)), cancellationToken);

    private static Task<Results<Ok<PurposeIdReply>, NotFound>> ServeAsync(Id<Purpose> id, ServingRequest request, LedgerContext db, PurposeActs acts, CancellationToken cancellationToken) =>
        ChangeAsync(id, db, purpose => acts.ServeAsync(purpose, request.LotRef, cancellationToken), cancellationToken);

    private static Func<Purpose, Task> Sync(Action<Purpose> act) => purpose =>
    {
        act(purpose);
        return Task.CompletedTask;
    };

    private static async Task<Results<Ok<PurposeIdReply>, NotFound>> ChangeAsync(Id<Purpose> id, LedgerContext db, Func<Purpose, Task> act, CancellationToken cancellationToken)
    {
        if (await db.Purposes.Whole().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } purpose)
        {
            return TypedResults.NotFound();
        }

        await act(purpose);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(new PurposeIdReply(purpose.Id.Value, purpose.Name));
    }

    private static async Task<Results<Ok<List<WeekAheadReply>>, NotFound>> OutlookAsync(Id<Purpose> id, PurposeQuery query, HouseZone house, CancellationToken cancellationToken) =>
        (await query.ListAsync(house.Today, cancellationToken)).FirstOrDefault(row => row.Purpose.Id == id) is { } row
            ? TypedResults.Ok(row.Cover.Outlook(house.Today).Select(WeekAheadReply.Of).ToList())
            : TypedResults.NotFound();
}

internal sealed record PurposeRequest(string Name, decimal WeeklyUseKg, ProcessFamily? Process = null, decimal? LeastScore = null, string? Flavour = null, string? Blend = null, decimal? SharePercent = null)
{
    public PurposeTerms Terms()
    {
        Rule.Require(WeeklyUseKg is >= 0m and <= 1_000_000m, "The use of a week lies between 0 and 1,000,000 kg.", nameof(WeeklyUseKg));
        Rule.Require(LeastScore is null or (>= 0m and <= 100m), "The least score lies between 0 and 100 points.", nameof(LeastScore));
        return new PurposeTerms(Name, Process, LeastScore is { } least ? Score.Of(least) : null, Flavour, Weight.FromKilograms(WeeklyUseKg), Blend, SharePercent is { } share ? Percent.Of(share) : null);
    }
}

internal sealed record ServingRequest(string LotRef);

internal sealed record PurposeIdReply(Guid Id, string Name);

internal sealed record PurposeReply(
    Guid Id, string Name, ProcessFamily? Process, decimal? LeastScore, string? Flavour, string? Blend, decimal? SharePercent, decimal PlannedUseKg,
    decimal AvailableKg, decimal ToComeKg, decimal UseKg, bool IsMeasured, decimal? UseSpreadKg, int WeeksCounted, decimal? CoverWeeks, decimal PositionKg, decimal SafetyStockKg, decimal ReorderPointKg, bool IsTimeToBuy)
{
    public static PurposeReply Of(Purpose purpose, PurposeCover cover) => new(
        purpose.Id.Value, purpose.Name, purpose.Process, purpose.LeastScore?.Points, purpose.Flavour, purpose.Blend, purpose.Share?.Points, purpose.WeeklyUse.Kilograms,
        cover.Stock.Available.Kilograms, cover.Stock.ToCome.Kilograms, cover.WeeklyUse.Kilograms, cover.IsMeasured, cover.Stock.Used.Spread?.Kilograms, cover.Stock.Used.Weeks,
        cover.Weeks, cover.Position.Kilograms, cover.Reorder.SafetyStock.Kilograms, cover.Reorder.Point.Kilograms, cover.IsTimeToBuy);
}

internal sealed record WeekAheadReply(DateOnly From, decimal CameKg, decimal LeftKg, decimal MissingKg, decimal? CoverWeeks, decimal? CoverFromStockWeeks)
{
    public static WeekAheadReply Of(WeekAhead week) => new(week.From, week.Came.Kilograms, week.Left.Kilograms, week.Missing.Kilograms, week.Cover, week.CoverFromStock);
}

internal sealed record LotUseReply(Guid LotId, string LotRef, decimal AvailableKg, decimal UseKg, decimal? SpreadKg, int WeeksCounted, decimal? CoverWeeks)
{
    public static LotUseReply Of(LotUseRow row) => new(row.LotId.Value, row.Ref, row.Available.Kilograms, row.Use.Mean.Kilograms, row.Use.Spread?.Kilograms, row.Use.Weeks, row.Cover);
}
