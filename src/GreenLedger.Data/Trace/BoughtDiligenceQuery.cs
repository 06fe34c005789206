using GreenLedger.Data.Contracts;
using GreenLedger.Data.Offers;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Trace;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Trace;

/// <summary>The due diligence of a lot that the house bought, with how much of it is where.</summary>
/// <param name="Contracted">Not on board yet.</param>
/// <param name="Afloat">On board and not received.</param>
/// <param name="InStock">As weighed.</param>
/// <param name="Expected">The first day on which some of it is to come; null where none is on its way.</param>
public sealed record BoughtDiligence(DiligenceView View, Weight Contracted, Weight Afloat, Weight InStock, DateOnly? Expected)
{
    /// <summary>All of it was placed on the market before the regulation applied to the house: no statement is asked for.</summary>
    public bool IsBefore => View.WasPlacedBefore && Contracted == Weight.Zero && Afloat == Weight.Zero;

    public IReadOnlyList<string> Missing => field ??= IsBefore ? [] : View.Missing;

    /// <summary>Looked at where it is asked for: doubts about plots take their time.</summary>
    public OpenPoints Open => field ??= View.Open;

    public Weight Total => Contracted + Afloat + InStock;

    public bool Is(BoughtStage stage) => (stage switch { BoughtStage.Contracted => Contracted, BoughtStage.Afloat => Afloat, _ => InStock }) > Weight.Zero;
}

/// <summary>Reads the due diligence of all lots that are contracted, afloat or in stock.</summary>
public sealed class BoughtDiligenceQuery(LedgerContext db, ShipmentQuery shipments, DiligenceQuery diligences)
{
    private static readonly GoodsState[] Ended = [GoodsState.Drafted, GoodsState.Closed, GoodsState.Cancelled];

    /// <summary>By reference.</summary>
    public async Task<IReadOnlyList<BoughtDiligence>> ListAsync(CancellationToken cancellationToken)
    {
        var contracts = await db.Contracts.AsNoTracking().Where(contract => !Ended.Contains(contract.Goods)).Whole().ToListAsync(cancellationToken);
        var (parts, arrivals) = await shipments.PartsAsync(contracts.ConvertAll(contract => contract.Id), cancellationToken);
        var received = arrivals.Select(arrival => arrival.ShipmentLotId).ToHashSet();
        var contracted = contracts.SelectMany(contract => ContractProgress.Of(contract, parts, received).Lots.Where(lot => lot.Left > Weight.Zero).Select(lot => (lot.Lot.LotId, Weight: lot.Left, On: (DateOnly?)contract.ShipUntil))).ToLookup(one => one.LotId);
        var coming = parts.SelectMany(shipment => shipment.Lots.Where(lot => !received.Contains(lot.Id)).Select(lot => (lot.LotId, lot.Net, IsOnBoard: shipment.ShippedOn is not null, On: shipment.DischargedOn ?? shipment.PlannedArrival))).ToLookup(one => one.LotId);
        var holdings = (await db.Holdings.AsNoTracking().ToListAsync(cancellationToken)).Where(holding => holding.Weighed > Weight.Zero).ToLookup(holding => holding.LotId, holding => holding.Weighed);
        Id<Lot>[] ids = [.. contracted.Select(group => group.Key).Union(coming.Select(group => group.Key)).Union(holdings.Select(group => group.Key))];
        return [.. (await diligences.ListAsync(ids, cancellationToken)).Select(view => new BoughtDiligence(
            view,
            Sum(contracted[view.Lot.Id].Select(one => one.Weight)),
            Sum(coming[view.Lot.Id].Where(one => one.IsOnBoard).Select(one => one.Net)),
            Sum(holdings[view.Lot.Id]),
            coming[view.Lot.Id].Min(one => one.On) ?? contracted[view.Lot.Id].Min(one => one.On)))];
    }

    private static Weight Sum(IEnumerable<Weight> weights) => weights.Aggregate(Weight.Zero, (sum, weight) => sum + weight);
}
