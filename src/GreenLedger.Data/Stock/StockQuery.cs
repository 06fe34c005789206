using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Stock;

/// <summary>What of a lot lies in a warehouse at the end of a day.</summary>
public sealed record StockRow(Id<Lot> LotId, string LotRef, string LotName, Id<Warehouse> WarehouseId, string Warehouse, int Bags, Weight Packed, Weight Weighed, Weight Reserved)
{
    public Weight Available => Weighed - Reserved;
}

/// <summary>A line of the ledger of a lot.</summary>
public sealed record MovementRow(
    Id<Movement> Id, MovementKind Kind, string Warehouse, int Bags, Weight Packed, Weight Weighed, DateOnly On, string? Document, string? Reason, string Who, DateTimeOffset At,
    Id<Arrival>? ArrivalId, Id<Movement>? ReversesId, bool IsReversed);

/// <summary>A reserve that was not let go.</summary>
public sealed record ReservationRow(Id<Reservation> Id, int Version, string Warehouse, Weight Weight, string Use, string Who, DateTimeOffset At);

/// <summary>An arrival whose coffee has not come into stock yet.</summary>
public sealed record WaitingRow(Id<Arrival> Id, string LotRef, string LotName, DateOnly ReceivedOn, int Bags, Weight Landed);

/// <summary>Reads the stock ledger: balances are sums of movements, for any day.</summary>
public sealed class StockQuery(LedgerContext db)
{
    /// <summary>What lay where at the end of a day; of today with what is reserved.</summary>
    /// <param name="on">Null for now.</param>
    public async Task<IReadOnlyList<StockRow>> ListAsync(string? text, Id<Warehouse>? warehouse, DateOnly? on, CancellationToken cancellationToken)
    {
        IQueryable<Lot> lots = db.Lots.AsNoTracking();
        if (SearchText.Of(text) is { Length: > 0 } folded)
        {
            lots = lots.Where(lot => lot.SearchText.Contains(folded));
        }

        var balances = on is { } day
            ? db.Movements.Where(movement => movement.On <= day)
                .GroupBy(movement => new { movement.LotId, movement.WarehouseId })
                .Select(group => new { group.Key.LotId, group.Key.WarehouseId, Bags = group.Sum(one => one.Bags), Packed = group.Sum(one => one.Packed.Micrograms), Weighed = group.Sum(one => one.Weighed.Micrograms), Reserved = 0L })
            : db.Holdings
                .Select(holding => new { holding.LotId, holding.WarehouseId, holding.Bags, Packed = holding.Packed.Micrograms, Weighed = holding.Weighed.Micrograms, Reserved = holding.Reserved.Micrograms });
        var rows = await balances
            .Where(row => row.Weighed != 0 && (warehouse == null || row.WarehouseId == warehouse))
            .Join(lots, row => row.LotId, lot => lot.Id, (row, lot) => new { row, lot.Ref, lot.Name })
            .Join(db.Warehouses, row => row.row.WarehouseId, house => house.Id, (row, house) => new { row.row, row.Ref, row.Name, Warehouse = house.Name })
            .OrderBy(row => row.Ref).ThenBy(row => row.Warehouse)
            .ToListAsync(cancellationToken);
        return [.. rows.Select(one => new StockRow(
            one.row.LotId, one.Ref, one.Name, one.row.WarehouseId, one.Warehouse, one.row.Bags, new Weight(one.row.Packed), new Weight(one.row.Weighed), new Weight(one.row.Reserved)))];
    }

    /// <summary>The ledger of a lot, the latest first.</summary>
    public async Task<IReadOnlyList<MovementRow>> MovementsAsync(Id<Lot> lotId, CancellationToken cancellationToken) => await Rows(db.Movements.Where(movement => movement.LotId == lotId)).ToListAsync(cancellationToken);

    /// <summary>
    /// The days of a holding, and what a bag of its lot holds by the papers with which it came into any warehouse; nothing for a holding that is not there.
    /// </summary>
    public async Task<RunningStock> DaysAsync(Id<Holding> holdingId, CancellationToken cancellationToken)
    {
        var days = await db.Movements.Where(movement => movement.HoldingId == holdingId)
            .GroupBy(movement => movement.On)
            .Select(day => new { On = day.Key, Bags = day.Sum(one => one.Bags), Packed = day.Sum(one => one.Packed.Micrograms), Weighed = day.Sum(one => one.Weighed.Micrograms) })
            .ToListAsync(cancellationToken);
        var came = await Standing().Where(movement => movement.Kind == MovementKind.Opening || movement.Kind == MovementKind.Receipt)
            .Where(movement => db.Holdings.Any(holding => holding.Id == holdingId && holding.LotId == movement.LotId))
            .Select(movement => new { movement.Bags, Packed = movement.Packed.Micrograms }).Distinct().ToListAsync(cancellationToken);
        return new RunningStock(days.Select(day => (day.On, new StockAmount(day.Bags, new Weight(day.Packed), new Weight(day.Weighed)))))
        {
            Bag = PackedShare.BagOf(came.Select(one => new StockAmount(one.Bags, new Weight(one.Packed), Weight.Zero))),
        };
    }

    public async Task<IReadOnlyList<ReservationRow>> ReservationsAsync(Id<Lot> lotId, CancellationToken cancellationToken) => await db.Reservations.AsNoTracking()
        .Where(reservation => reservation.EndedAt == null)
        .Join(db.Holdings.Where(holding => holding.LotId == lotId), reservation => reservation.HoldingId, holding => holding.Id, (reservation, holding) => new { reservation, holding.WarehouseId })
        .Join(db.Warehouses, row => row.WarehouseId, warehouse => warehouse.Id, (row, warehouse) => new { row.reservation, warehouse.Name })
        .Join(db.People, row => row.reservation.By, person => person.Id, (row, person) => new { row.reservation, row.Name, Who = person.Name })
        .OrderBy(row => row.reservation.At)
        .Select(row => new ReservationRow(row.reservation.Id, row.reservation.Version, row.Name, row.reservation.Weight, row.reservation.Use, row.Who, row.reservation.At))
        .ToListAsync(cancellationToken);

    /// <summary>Arrivals that have not come into stock, or whose receipt was taken back.</summary>
    public async Task<IReadOnlyList<WaitingRow>> WaitingAsync(CancellationToken cancellationToken) => await db.Arrivals.AsNoTracking()
        .Where(arrival => arrival.Landed.Micrograms > 0 && !Standing().Any(movement => movement.ArrivalId == arrival.Id))
        .Join(db.Lots, arrival => arrival.LotId, lot => lot.Id, (arrival, lot) => new { arrival, lot })
        .OrderBy(row => row.arrival.ReceivedOn).ThenBy(row => row.lot.Ref)
        .Select(row => new WaitingRow(row.arrival.Id, row.lot.Ref, row.lot.Name, row.arrival.ReceivedOn, row.arrival.Bags, row.arrival.Landed))
        .ToListAsync(cancellationToken);

    public Task<bool> IsInStockAsync(Id<Arrival> arrivalId, CancellationToken cancellationToken) => Standing().AnyAsync(movement => movement.ArrivalId == arrivalId, cancellationToken);

    /// <summary>Movements that nothing takes back.</summary>
    private IQueryable<Movement> Standing() => db.Movements.Where(movement => !db.Movements.Any(back => back.ReversesId == movement.Id));

    private IQueryable<MovementRow> Rows(IQueryable<Movement> movements) => movements.AsNoTracking()
        .Join(db.Warehouses, movement => movement.WarehouseId, warehouse => warehouse.Id, (movement, warehouse) => new { movement, Warehouse = warehouse.Name })
        .Join(db.People, row => row.movement.By, person => person.Id, (row, person) => new { row.movement, row.Warehouse, Who = person.Name })
        .OrderByDescending(row => row.movement.On).ThenByDescending(row => row.movement.Id)
        .Select(row => new MovementRow(
            row.movement.Id, row.movement.Kind, row.Warehouse, row.movement.Bags, row.movement.Packed, row.movement.Weighed, row.movement.On, row.movement.Document, row.movement.Reason, row.Who, row.movement.At,
            row.movement.ArrivalId, row.movement.ReversesId, db.Movements.Any(back => back.ReversesId == row.movement.Id)));
}
