using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Stock;

/// <summary>What page and API do alike with a count. Whoever calls saves.</summary>
public sealed class CountActs(LedgerContext db, StockQuery query, CountQuery counts, TimeProvider clock)
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

    /// <summary>Adds a lot that was found here to an open count, by its reference, its identity or what its label holds.</summary>
    /// <exception cref="RuleBrokenException">No lot, or several, have that reference.</exception>
    public async Task<CountLine> FindAsync(StockCount count, FoundLot found, Id<Person> by, CancellationToken cancellationToken)
    {
        Rule.Require(!string.IsNullOrWhiteSpace(found.Lot), "Which lot was found? Type its reference, or read its label.", nameof(found.Lot));
        var lots = await counts.LotsAsync(found.Lot, cancellationToken);
        Rule.Require(lots.Count > 0, $"No lot has the reference {found.Lot.Trim()}: look for it under Lots, or load its offer first.", nameof(found.Lot));
        Rule.Require(lots.Count == 1, $"{lots.Count} lots have the reference {found.Lot.Trim()}, of several suppliers or crops: read the label of the one that is meant, or type what its label says.", nameof(found.Lot));
        Rule.Require(found.Bags is >= 0 and <= 100_000, "How many bags were found? Write 0 for loose coffee.", nameof(found.Bags));
        Rule.Require(found.WeighedKg is > 0m and <= 100_000_000m, "How many kilograms were found? They lie above zero.", nameof(found.WeighedKg));
        var holding = await db.HoldingAsync(lots[0].Id, count.WarehouseId, cancellationToken);
        return count.Find(holding, found.Bags.Value, Weight.FromKilograms(found.WeighedKg.Value), found.Reason, by);
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

/// <summary>A lot that lies where the ledger has none of it.</summary>
/// <param name="Lot">Its reference, or what its label holds.</param>
public sealed record FoundLot(string? Lot, int? Bags, decimal? WeighedKg, string? Reason);
