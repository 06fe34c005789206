using GreenLedger.Data;
using GreenLedger.Data.Trace;
using GreenLedger.Documents.Trace;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>A stop of a trace; `recordId` is that of the record whose page tells the rest.</summary>
internal sealed record TraceStopReply(string Kind, Guid Id, Guid RecordId, string Name, string? Detail, DateOnly? On, decimal? WeightKg, Guid? LotId, string? Purpose)
{
    public static TraceStopReply Of(TraceNode node) => new(node.Key.Kind.ToString(), node.Key.Id, node.RecordId, node.Name, node.Detail, node.On, node.Weight?.Kilograms, node.LotId?.Value, node.Purpose);
}

/// <summary>A way between two stops, by their kinds and ids.</summary>
internal sealed record TraceStretchReply(string FromKind, Guid FromId, string ToKind, Guid ToId, DateOnly? On, decimal? WeightKg)
{
    public static TraceStretchReply Of(TraceEdge edge) => new(edge.From.Kind.ToString(), edge.From.Id, edge.To.Kind.ToString(), edge.To.Id, edge.On, edge.Weight?.Kilograms);
}

internal sealed record BalancePartReply(string What, decimal WeightKg);

/// <summary>A step of a mass balance: `unexplainedKg` is 0 where it closes.</summary>
internal sealed record BalanceStepReply(string From, decimal BeforeKg, string To, decimal AfterKg, IReadOnlyList<BalancePartReply> Parts, decimal UnexplainedKg)
{
    public static BalanceStepReply Of(BalanceStep step) => new(
        step.From, step.Before.Kilograms, step.To, step.After.Kilograms, [.. step.Parts.Select(part => new BalancePartReply(part.What, part.Weight.Kilograms))], step.Unexplained.Kilograms);
}

internal sealed record BalanceReply(Guid LotId, bool Closes, IReadOnlyList<BalanceStepReply> Steps)
{
    public static BalanceReply Of(MassBalance balance) => new(balance.LotId.Value, balance.Closes, [.. balance.Steps.Select(BalanceStepReply.Of)]);
}

/// <summary>Something that a trace, or a mock recall, may start from.</summary>
internal sealed record TracePickReply(TraceFrom From, Guid Id, string Name, string? Detail);

/// <summary>`unsureLotIds` are lots of the same producer of which nobody said on which plots they grew.</summary>
internal sealed record TraceReply(string Name, IReadOnlyList<TraceStopReply> Stops, IReadOnlyList<TraceStretchReply> Ways, IReadOnlyList<BalanceReply> Balances, IReadOnlyList<Guid> UnsureLotIds)
{
    public static TraceReply Of(TraceCase found)
    {
        var way = found.Way();
        return new TraceReply(
            found.Name, [.. way.Nodes.Select(TraceStopReply.Of)], [.. way.Edges.Select(TraceStretchReply.Of)], [.. found.Balances().Select(BalanceReply.Of)], [.. found.Unsure.Select(lot => lot.Id.Value)]);
    }
}

/// <summary>Where coffee came from and where it went.</summary>
internal static class TraceApi
{
    public static void MapTraceApi(this IEndpointRouteBuilder api)
    {
        var trace = api.MapGroup("/trace").WithTags("Trace");
        trace.MapGet("/starts", StartsAsync).WithName("FindTraceStarts").WithSummary("What a trace may start from: lots, plots, producers, contracts, shipments and what left the stock")
            .WithDescription($"`search` is any part of a reference, name, bill of lading, container or batch; without it the newest come. At most {TracePicksQuery.Most} of each kind: what is more is found by a longer word.");
        trace.MapGet("/ways/{from}/{id}", WayAsync).WithName("TraceWay").WithSummary("Back and forth from a lot, plot, producer, contract, shipment or movement, with the mass balance of each lot")
            .WithDescription("`from` is Lot, Plot, Producer, Contract, Shipment or Release; `id` is its identity, for Release that of the movement. Bags of one lot in one warehouse are not told apart.");
        trace.MapGet("/ways/{from}/{id}/epcis", EpcisAsync).WithName("TraceEpcis").WithSummary("The same as EPCIS 2.0 events in JSON-LD, by the names for exchange");
        trace.MapRecallsApi();
        trace.MapNamesApi();
    }

    private static async Task<Ok<List<TracePickReply>>> StartsAsync(TracePicksQuery query, CancellationToken cancellationToken, string? search = null) =>
        TypedResults.Ok((await query.ListAsync(search, cancellationToken)).Select(pick => new TracePickReply(pick.From, pick.Id, pick.Name, pick.Detail)).ToList());

    private static async Task<Results<FileContentHttpResult, NotFound>> EpcisAsync(TraceFrom from, Guid id, TraceQuery query, LedgerContext db, HouseZone house, TimeProvider clock, CancellationToken cancellationToken) =>
        await query.FindAsync(from, id, cancellationToken) is { } found
            ? TypedResults.File(EpcisExport.Write(found.Facts, found.Way(), await db.ExchangeNames.AsNoTracking().OfHouseAsync(cancellationToken), house.Zone, clock.GetUtcNow(), (await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken)) is { IsRoastLossStated: true } habits ? habits.RoastLoss : (Percent?)null), EpcisExport.MediaType)
            : TypedResults.NotFound();

    private static async Task<Results<Ok<TraceReply>, NotFound>> WayAsync(TraceFrom from, Guid id, TraceQuery query, CancellationToken cancellationToken) =>
        await query.FindAsync(from, id, cancellationToken) is { } found ? TypedResults.Ok(TraceReply.Of(found)) : TypedResults.NotFound();
}
