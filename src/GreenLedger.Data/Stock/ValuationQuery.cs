using GreenLedger.Data.Costs;
using GreenLedger.Domain;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Stock;

/// <summary>A lot, or a pool of interchangeable lots, and what its stock is worth at cost on a day.</summary>
/// <param name="Name">The lot, or origin and process of the pool.</param>
/// <param name="LotId">Null for a pool.</param>
/// <param name="Left">As weighed.</param>
/// <param name="Cost">Accounting cost of what is left; null where a receipt has no cost yet.</param>
/// <param name="Lots">What is left of each lot; of a single lot it is the whole.</param>
/// <param name="Without">Lots whose coffee is not billed yet; each stands alone, so that its pool has a value.</param>
/// <param name="Each">The accounting cost a kilogram of a lot that stands alone, unrounded, as the lot itself says it; null for a pool, and where a count found more.</param>
public sealed record ValuedRow(string Name, Id<Lot>? LotId, Weight Left, Money? Cost, IReadOnlyList<(Id<Lot> Id, string Name, Weight Left)> Lots, IReadOnlyList<string> Without, decimal? Each)
{
    /// <summary>The cost of what is left, shared over its lots by kilograms so that the parts add up; null where a cost is missing.</summary>
    public IEnumerable<(Id<Lot> Id, string Name, Weight Left, Money? Cost)> Parts()
    {
        var parts = Cost?.SplitBy([.. Lots.Select(lot => lot.Left.Kilograms)]);
        return Lots.Select((lot, at) => (lot.Id, lot.Name, lot.Left, parts?[at]));
    }

    public decimal? PerKilogram => Each ?? (Cost is { } cost && Left > Weight.Zero ? cost.Amount / Left.Kilograms : null);
}

/// <summary>A bill's part of a lot's accounting cost that fell on coffee that was gone by the day of the bill.</summary>
public sealed record LateRow(Id<Lot> LotId, string Lot, Id<CostPosting> PostingId, string Document, DateOnly On, Money Late);

/// <summary>The stock of a day at cost, and the bills up to that day that came too late for coffee already gone, whatever the way of valuing: by lot, then by day.</summary>
public sealed record ValuedStock(ValuationMethod Method, IReadOnlyList<ValuedRow> Rows, IReadOnlyList<LateRow> Late)
{
    /// <summary>Of bills from a day on; of all where none is given.</summary>
    public IEnumerable<LateRow> LateSince(DateOnly? since) => Late.Where(late => since is null || late.On >= since);
}

/// <summary>Values the stock of a day by the way the house had chosen for it, at all that was billed up to that day.</summary>
public sealed class ValuationQuery(LedgerContext db)
{
    public async Task<ValuedStock> FindAsync(DateOnly on, CancellationToken cancellationToken)
    {
        var habits = await db.StockHabits.AsNoTracking().Whole().OfHouseAsync(cancellationToken);
        var method = habits.MethodOn(on);
        var house = await db.Houses.AsNoTracking().Select(one => one.Currency).SingleOrDefaultAsync(cancellationToken);
        var movements = await Standing(on).OrderBy(movement => movement.On).ThenByDescending(movement => movement.Weighed.Micrograms > 0).ThenBy(movement => movement.Id)
            .Select(movement => new Step(movement.LotId, movement.Weighed, movement.Kind)).ToListAsync(cancellationToken);
        var ids = movements.Select(step => step.LotId).Distinct().ToList();
        var lots = await NamesAsync(ids, cancellationToken);
        var costs = await new LotCostQuery(db).ListAsync(ids, on, cancellationToken);
        var alone = lots.Where(lot => method == ValuationMethod.EachLot || !IsCosted(costs[lot.Id])).ToList();
        var pools = lots.Except(alone).GroupBy(lot => $"{lot.Country ?? "origin unknown"}, {lot.Process ?? "process unknown"}");
        var groups = alone.Select(lot => (Name: lot.Written, LotId: (Id<Lot>?)lot.Id, Lots: (IReadOnlyList<LotName>)[lot]))
            .Concat(pools.Select(pool => (Name: pool.Key, LotId: (Id<Lot>?)null, Lots: (IReadOnlyList<LotName>)[.. pool])));
        var rows = groups.Select(group => RowOf(group.Name, group.LotId, group.Lots, movements, costs, method, house)).Where(row => row.Left > Weight.Zero).OrderBy(row => row.Name, StringComparer.OrdinalIgnoreCase);
        var late = from lot in lots
                   from part in costs[lot.Id].Parts
                   where part.LateAccounting.MinorUnits != 0
                   select new LateRow(lot.Id, lot.Written, part.Posting.Id, part.Posting.Document, part.Posting.On, part.LateAccounting);
        return new ValuedStock(method, [.. rows], [.. late]);
    }

    /// <summary>By reference.</summary>
    private async Task<List<LotName>> NamesAsync(List<Id<Lot>> ids, CancellationToken cancellationToken) =>
        await db.Lots.AsNoTracking().Where(lot => ids.Contains(lot.Id)).OrderBy(lot => lot.Ref).Select(lot => new LotName(
            lot.Id, lot.Ref, lot.Name,
            db.Countries.Where(country => country.Code == lot.CountryCode).Select(country => country.Name).FirstOrDefault() ?? lot.CountryCode,
            db.ProcessMethods.Where(method => method.Id == lot.ProcessMethodId).Select(method => method.Name).FirstOrDefault() ?? lot.ProcessAsWritten)).ToListAsync(cancellationToken);

    private static bool IsCosted(LotCost cost) => cost.HasCoffee && cost.AccountingPerKilogram is not null;

    private static ValuedRow RowOf(
        string name, Id<Lot>? lotId, IReadOnlyList<LotName> lots, List<Step> movements, IReadOnlyDictionary<Id<Lot>, LotCost> costs, ValuationMethod method, Currency house)
    {
        var ids = lots.Select(lot => lot.Id).ToHashSet();
        var steps = movements.Where(step => ids.Contains(step.LotId)).ToList();
        var left = steps.Aggregate(Weight.Zero, (sum, step) => sum + step.Weighed);
        var without = lots.Where(lot => !IsCosted(costs[lot.Id])).Select(lot => lot.Ref).ToList();
        var cost = without.Count > 0 || left <= Weight.Zero ? (Money?)null : StockValue.Of(Costed(steps, costs), method, house).LeftCost;
        var kept = lots.Select(lot => (lot.Id, lot.Written, Left: steps.Where(step => step.LotId == lot.Id).Aggregate(Weight.Zero, (sum, step) => sum + step.Weighed))).Where(lot => lot.Left > Weight.Zero);
        var each = cost is not null && lotId is { } alone && steps.TrueForAll(step => step.Kind != MovementKind.Gain) ? costs[alone].AccountingPerKilogram : null;
        return new ValuedRow(name, lotId, left, cost, [.. kept], without, each);
    }

    /// <summary>What counts on the day, comings before goings: an issue or a transfer that was taken back by then stands for nothing.</summary>
    private IQueryable<Movement> Standing(DateOnly on)
    {
        var until = db.Movements.AsNoTracking().Where(movement => movement.On <= on);
        return until.Where(movement =>
            movement.Kind != MovementKind.TransferIn && movement.Kind != MovementKind.TransferOut && movement.Weighed.Micrograms != 0
            && !(movement.Weighed.Micrograms < 0 && movement.Kind != MovementKind.Reversal && until.Any(back => back.ReversesId == movement.Id))
            && !(movement.Kind == MovementKind.Reversal && until.Any(one => one.Id == movement.ReversesId && (one.Weighed.Micrograms < 0 || one.Kind == MovementKind.TransferIn))));
    }

    /// <summary>Every coming at its lot's accounting cost a kilogram; what a count found cost nothing.</summary>
    private static IEnumerable<StockStep> Costed(List<Step> steps, IReadOnlyDictionary<Id<Lot>, LotCost> costs) => steps.Select(step => new StockStep(
        step.Weighed,
        step.Weighed <= Weight.Zero ? null
            : step.Kind == MovementKind.Gain ? Money.Zero(costs[step.LotId].Accounting.Currency)
            : Money.Of(costs[step.LotId].AccountingPerKilogram!.Value * step.Weighed.Kilograms, costs[step.LotId].Accounting.Currency)));

    private sealed record Step(Id<Lot> LotId, Weight Weighed, MovementKind Kind);

    private sealed record LotName(Id<Lot> Id, string Ref, string Name, string? Country, string? Process)
    {
        public string Written => $"{Ref} {Name}";
    }
}
