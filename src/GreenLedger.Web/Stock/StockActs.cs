using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Stock;

/// <summary>What page and API do alike with stock: load the holding, let it decide, add the movement. Whoever calls saves.</summary>
public sealed class StockActs(LedgerContext db, StockQuery query, TimeProvider clock)
{
    /// <summary>Takes an arrival into a warehouse; null for one that is not there.</summary>
    public async Task<Movement?> ReceiveAsync(Id<Arrival> arrivalId, Id<Warehouse> warehouseId, MovementNote note, Id<Person> by, CancellationToken cancellationToken)
    {
        var arrival = await db.Arrivals.SingleOrDefaultAsync(one => one.Id == arrivalId, cancellationToken);
        if (arrival is null)
        {
            return null;
        }

        Rule.Require(!await query.IsInStockAsync(arrivalId, cancellationToken), "This arrival is in stock already: take that movement back first.", nameof(Movement.ArrivalId));
        // Its version decides where two people take it in at once, perhaps into two warehouses.
        db.Entry(arrival).State = EntityState.Modified;
        var holding = await db.HoldingAsync(arrival.LotId, warehouseId, cancellationToken);
        return Added(holding.Receive(arrival, note, by, clock.GetUtcNow()));
    }

    /// <summary>Opening stock, a return or a gain.</summary>
    public async Task<Movement> AddAsync(Id<Lot> lotId, Id<Warehouse> warehouseId, MovementKind kind, StockAmount amount, MovementNote note, Id<Person> by, CancellationToken cancellationToken)
    {
        if (kind == MovementKind.Return)
        {
            await RequireOutAsync(lotId, amount.Weighed, cancellationToken);
        }

        var holding = await db.HoldingAsync(lotId, warehouseId, cancellationToken);
        return Added(holding.Add(kind, amount, note, by, clock.GetUtcNow()));
    }

    /// <summary>A release, a sample, a sale or a loss.</summary>
    public async Task<Movement> TakeAsync(Id<Lot> lotId, Id<Warehouse> warehouseId, MovementKind kind, int bags, Weight weighed, MovementNote note, Id<Person> by, CancellationToken cancellationToken)
    {
        Rule.Require(MovementKinds.Outward.Contains(kind), "Choose a release, a sample, a sale or a loss.", nameof(Movement.Kind));
        var holding = await HeldAsync(lotId, warehouseId, cancellationToken);
        Rule.Require(note.For is null || await db.Purposes.AnyAsync(one => one.Id == note.For, cancellationToken), "Choose a purpose of the house.", nameof(Movement.PurposeId));
        var fits = Most(holding, bags);
        if (kind == MovementKind.Release && note.For is { } purpose)
        {
            await UseReservesAsync(holding, purpose, weighed, by, cancellationToken);
        }

        var taken = holding.Take(kind, bags, weighed, await query.DaysAsync(holding.Id, cancellationToken), note, by, clock.GetUtcNow());
        Rule.Require(holding.Weighed == Weight.Zero || weighed <= fits, $"{bags:#,0} bags of this lot, and one opened before, do not hold {weighed.Kilograms:#,0.###} kg: look at the bags and the kilograms again.", nameof(Movement.Bags));
        return Added(taken);
    }

    public async Task<Movement> TransferAsync(Id<Lot> lotId, Id<Warehouse> from, Id<Warehouse> to, int bags, Weight weighed, MovementNote note, Id<Person> by, CancellationToken cancellationToken)
    {
        Rule.Require(from != to, "It is in this warehouse already: choose another one.", "ToWarehouseId");
        var holding = await HeldAsync(lotId, from, cancellationToken);
        var other = await db.HoldingAsync(lotId, to, cancellationToken);
        var (left, came) = holding.Transfer(other, bags, weighed, await query.DaysAsync(holding.Id, cancellationToken), note, by, clock.GetUtcNow());
        db.Add(came);
        return Added(left);
    }

    /// <summary>Takes a movement back, both halves of a transfer; null for one that is not there.</summary>
    public async Task<Movement?> ReverseAsync(Id<Movement> id, MovementNote note, Id<Person> by, CancellationToken cancellationToken)
    {
        var movement = await db.Movements.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        if (movement is null)
        {
            return null;
        }

        if (movement.TransferId is { } other)
        {
            var half = await db.Movements.AsNoTracking().SingleAsync(one => one.Id == other, cancellationToken);
            await BackAsync(half, note, by, cancellationToken);
        }

        return await BackAsync(movement, note, by, cancellationToken);
    }

    public async Task<Reservation> ReserveAsync(Id<Lot> lotId, Id<Warehouse> warehouseId, Weight weight, string? use, Id<Purpose>? purpose, Id<Person> by, CancellationToken cancellationToken)
    {
        var holding = await HeldAsync(lotId, warehouseId, cancellationToken);
        var name = purpose is { } id ? await db.Purposes.Where(one => one.Id == id).Select(one => one.Name).SingleOrDefaultAsync(cancellationToken) : null;
        Rule.Require(purpose is null || name is not null, "Choose a purpose of the house.", nameof(Reservation.PurposeId));
        var words = string.IsNullOrWhiteSpace(use) ? name : name is null ? use : $"{name}: {use.Trim()}";
        Rule.Require(words is not null, "What is it reserved for? Choose a purpose, or say it in words.", nameof(Reservation.Use));
        var reservation = holding.Reserve(weight, words, by, clock.GetUtcNow(), purpose);
        db.Add(reservation);
        return reservation;
    }

    /// <summary>Lets a reserve go; null for one that is not there.</summary>
    public async Task<Reservation?> FreeAsync(Id<Reservation> id, Id<Person> by, CancellationToken cancellationToken)
    {
        var reservation = await db.Reservations.SingleOrDefaultAsync(one => one.Id == id, cancellationToken);
        if (reservation is not null)
        {
            var holding = await db.Holdings.SingleAsync(one => one.Id == reservation.HoldingId, cancellationToken);
            holding.Free(reservation, by, clock.GetUtcNow());
        }

        return reservation;
    }

    private async Task<Movement> BackAsync(Movement movement, MovementNote note, Id<Person> by, CancellationToken cancellationToken)
    {
        var holding = await db.Holdings.SingleAsync(one => one.Id == movement.HoldingId, cancellationToken);
        var isReversed = await db.Movements.AnyAsync(one => one.ReversesId == movement.Id, cancellationToken);
        return Added(holding.Reverse(movement, isReversed, await query.DaysAsync(holding.Id, cancellationToken), note, by, clock.GetUtcNow()));
    }

    private async Task<Holding> HeldAsync(Id<Lot> lotId, Id<Warehouse> warehouseId, CancellationToken cancellationToken)
    {
        var holding = await db.Holdings.SingleOrDefaultAsync(one => one.LotId == lotId && one.WarehouseId == warehouseId, cancellationToken);
        Rule.Require(holding is not null, "Nothing of this lot lies in this warehouse: choose the one where it is.", nameof(Movement.WarehouseId));
        return holding;
    }

    /// <summary>What so many bags and one opened before can hold: half as much again as the mean bag that lies there.</summary>
    private static Weight Most(Holding holding, int bags) =>
        holding.Bags == 0 ? holding.Weighed : new Weight((long)(holding.Weighed.Micrograms * (1.5m * (bags + 1) / holding.Bags)));

    private async Task UseReservesAsync(Holding holding, Id<Purpose> purpose, Weight released, Id<Person> by, CancellationToken cancellationToken)
    {
        var own = await db.Reservations.Where(one => one.HoldingId == holding.Id && one.PurposeId == purpose && one.EndedAt == null).ToListAsync(cancellationToken);
        if (holding.Use(own, released, by, clock.GetUtcNow()) is { } rest)
        {
            db.Add(rest);
        }
    }

    /// <summary>Only what went out and has not come back is returned.</summary>
    private async Task RequireOutAsync(Id<Lot> lotId, Weight returned, CancellationToken cancellationToken)
    {
        MovementKind[] ways = [MovementKind.Sale, MovementKind.Release, MovementKind.SampleDrawn, MovementKind.Return];
        var away = new Weight(-await db.Movements.Where(movement => movement.LotId == lotId && ways.Contains(movement.Kind) && !db.Movements.Any(back => back.ReversesId == movement.Id)).SumAsync(movement => movement.Weighed.Micrograms, cancellationToken));
        Rule.Require(returned <= away, $"Only {away.Kilograms:#,0.###} kg of this lot were sold, released or drawn and have not come back: return no more, or write a gain.", nameof(Movement.Weighed));
    }

    private Movement Added(Movement movement)
    {
        db.Add(movement);
        return movement;
    }
}
