using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Stock;

/// <summary>What page and API do alike with a count. Whoever calls saves.</summary>
public sealed class CountActs(LedgerContext db, StockQuery query, TimeProvider clock)
{
    /// <summary>Begins a count of a warehouse with what the ledger says; one at a time.</summary>
    public async Task<StockCount> BeginAsync(Id<Warehouse> warehouse, DateOnly on, Id<Person> by, CancellationToken cancellationToken)
    {
        Rule.Require(!await db.StockCounts.AnyAsync(one => one.WarehouseId == warehouse && one.ApprovedAt == null && one.DroppedBecause == null, cancellationToken), "A count of this warehouse is open: finish it or give it up first.", nameof(StockCount.WarehouseId));
        var holdings = await db.Holdings.AsNoTracking().Where(one => one.WarehouseId == warehouse).ToListAsync(cancellationToken);
        var lastMoved = await db.Movements.Where(one => one.WarehouseId == warehouse).Select(one => (DateOnly?)one.On).MaxAsync(cancellationToken);
        var count = new StockCount(warehouse, on, holdings, lastMoved, by, clock.GetUtcNow());
        db.Add(count);
        return count;
    }

    /// <summary>Approves a count and adds its differences to the ledger; where the house asks for it, as somebody who did not count.</summary>
    public async Task<IReadOnlyList<Movement>> ApproveAsync(StockCount count, Id<Person> by, CancellationToken cancellationToken)
    {
        var ids = count.Lines.Select(line => line.HoldingId).ToList();
        var holdings = await db.Holdings.Where(holding => ids.Contains(holding.Id)).ToListAsync(cancellationToken);
        var days = new Dictionary<Id<Holding>, RunningStock>();
        foreach (var id in ids)
        {
            days[id] = await query.DaysAsync(id, cancellationToken);
        }

        var needsSecondPerson = (await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken)).CountNeedsSecondPerson;
        var movements = count.Approve(holdings, days, needsSecondPerson, by, clock.GetUtcNow());
        db.AddRange(movements);
        return movements;
    }
}
