using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Stock;

public static class Stocks
{
    /// <summary>With its lines.</summary>
    public static IQueryable<StockCount> Whole(this IQueryable<StockCount> counts) => counts.Include(count => count.Lines.OrderBy(line => line.Id));

    /// <summary>With the ways of valuing.</summary>
    public static IQueryable<StockHabits> Whole(this IQueryable<StockHabits> habits) => habits.Include(one => one.Valuations);

    /// <summary>With the lots that serve them.</summary>
    public static IQueryable<Purpose> Whole(this IQueryable<Purpose> purposes) => purposes.Include(purpose => purpose.Lots);

    /// <summary>Those that were not put away, by name.</summary>
    public static IQueryable<Purpose> InUse(this IQueryable<Purpose> purposes) => purposes.Where(purpose => purpose.IsInUse).OrderBy(purpose => purpose.Name);

    /// <summary>The lot's holding in the warehouse, with a new one added where there was none.</summary>
    public static async Task<Holding> HoldingAsync(this LedgerContext db, Id<Lot> lotId, Id<Warehouse> warehouseId, CancellationToken cancellationToken)
    {
        var known = await db.Holdings.SingleOrDefaultAsync(holding => holding.LotId == lotId && holding.WarehouseId == warehouseId, cancellationToken);
        if (known is null)
        {
            Rule.Require(await db.Warehouses.AnyAsync(warehouse => warehouse.Id == warehouseId, cancellationToken), "Choose a warehouse of the house.", nameof(Movement.WarehouseId));
            known = new Holding(lotId, warehouseId);
            db.Add(known);
        }

        return known;
    }
}
