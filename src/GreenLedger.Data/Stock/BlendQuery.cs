using GreenLedger.Data.Costs;
using GreenLedger.Data.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Stock;

/// <summary>A blend of the house.</summary>
public sealed record BlendRow(string Name, BlendCost Cost);

/// <summary>A lot in stock with its commercial landed cost and its newest score.</summary>
public sealed record StockedLot(Id<Lot> LotId, string Ref, string Name, Weight Weighed, decimal? CostPerKilogram, Score? Score);

/// <summary>Reads what blends cost: each component at the mean cost of the lots in stock that serve it.</summary>
public sealed class BlendQuery(LedgerContext db)
{
    /// <summary>By name.</summary>
    public async Task<IReadOnlyList<BlendRow>> ListAsync(IReadOnlyList<StockedLot> lots, CancellationToken cancellationToken)
    {
        var purposes = await db.Purposes.AsNoTracking().Whole().InUse().Where(purpose => purpose.Blend != null && purpose.Share != null).ToListAsync(cancellationToken);
        return
        [
            .. purposes.GroupBy(purpose => SearchText.Of(purpose.Blend)).OrderBy(blend => blend.Key, StringComparer.Ordinal)
                .Select(blend => new BlendRow(blend.First().Blend!, BlendCost.Of([.. blend.Select(purpose => PartOf(purpose, lots))]))),
        ];
    }

    /// <summary>Every lot in stock, by reference.</summary>
    public async Task<IReadOnlyList<StockedLot>> LotsAsync(CancellationToken cancellationToken)
    {
        var held = await db.Holdings.AsNoTracking().Where(holding => holding.Weighed.Micrograms > 0)
            .GroupBy(holding => holding.LotId).Select(group => new { LotId = group.Key, Weighed = group.Sum(one => one.Weighed.Micrograms) })
            .Join(db.Lots, row => row.LotId, lot => lot.Id, (row, lot) => new { row.LotId, row.Weighed, lot.Ref, lot.Name })
            .OrderBy(row => row.Ref).ToListAsync(cancellationToken);
        var bands = await db.QualityBands.AsNoTracking().OfHouseAsync(cancellationToken);
        var scores = await new LotScores(db, bands.FormId).ReadAsync(cancellationToken);
        var costs = await new LotCostQuery(db).ListAsync([.. held.Select(row => row.LotId)], null, cancellationToken);
        return held.ConvertAll(row => new StockedLot(
            row.LotId, row.Ref, row.Name, new Weight(row.Weighed), costs[row.LotId] is { HasCoffee: true } cost ? cost.PerKilogram : null, scores.Now(row.LotId)));
    }

    /// <summary>Lots without a cost or a score are left out of that mean.</summary>
    private static BlendPart PartOf(Purpose purpose, IReadOnlyList<StockedLot> lots)
    {
        var own = lots.Where(lot => purpose.Lots.Any(serving => serving.LotId == lot.LotId)).ToList();
        return new BlendPart(purpose.Name, purpose.Share!.Value, Mean(own, lot => lot.CostPerKilogram), Mean(own, lot => lot.Score?.Points));
    }

    private static decimal? Mean(List<StockedLot> lots, Func<StockedLot, decimal?> figure)
    {
        var known = lots.Where(lot => figure(lot) is not null).ToList();
        return known.Count == 0 ? null : known.Sum(lot => lot.Weighed.Kilograms * figure(lot)!.Value) / known.Sum(lot => lot.Weighed.Kilograms);
    }
}
