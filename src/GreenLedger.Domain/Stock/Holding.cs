using System.Globalization;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Stock;

/// <summary>
/// A lot in a warehouse: the sum of its movements, kept beside them so that the database can refuse what would go below zero
/// and tell two people apart who take the last bag at once. Every way to change it writes a movement.
/// </summary>
public sealed class Holding
{
    private Holding()
    {
    }

    public Holding(Id<Lot> lotId, Id<Warehouse> warehouseId)
    {
        Id = Id<Holding>.New();
        (LotId, WarehouseId) = (lotId, warehouseId);
    }

    public Id<Holding> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Lot> LotId { get; private set; }

    public Id<Warehouse> WarehouseId { get; private set; }

    public int Bags { get; private set; }

    /// <summary>What the papers say is in the bags.</summary>
    public Weight Packed { get; private set; }

    /// <summary>What the scales said, less what left.</summary>
    public Weight Weighed { get; private set; }

    /// <summary>Kilograms kept back for a use; never more than is there.</summary>
    public Weight Reserved { get; private set; }

    public StockAmount Amount => new(Bags, Packed, Weighed);

    /// <summary>On hand less what is reserved (handbook, trade 9.2).</summary>
    public Weight Available => Weighed - Reserved;

    /// <summary>Takes in what an arrival brought: its bags, their share of the shipped weight as packed, and the landed weight.</summary>
    public Movement Receive(Arrival arrival, MovementNote note, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(arrival);
        Rule.Require(arrival.LotId == LotId, "This arrival is of another lot.", nameof(Movement.LotId));
        Rule.Require(note.On >= arrival.ReceivedOn, string.Create(CultureInfo.InvariantCulture, $"It was received on {arrival.ReceivedOn:d MMMM yyyy}: it cannot have come into stock before."), nameof(Movement.On));
        var packed = arrival.ShippedBags == 0 ? arrival.Shipped : new Weight((long)((Int128)arrival.Shipped.Micrograms * arrival.Bags / arrival.ShippedBags));
        var movement = Write(MovementKind.Receipt, new StockAmount(arrival.Bags, packed, arrival.Landed), note, by, at);
        movement.ArrivalId = arrival.Id;
        return movement;
    }

    /// <summary>Coffee that comes without an arrival: opening stock, a return, a gain.</summary>
    /// <exception cref="RuleBrokenException">The kind is not one of those, nothing comes, or the reason is missing.</exception>
    public Movement Add(MovementKind kind, StockAmount amount, MovementNote note, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(MovementKinds.Inward.Contains(kind), "Choose opening stock, a return or a gain.", nameof(Movement.Kind));
        Rule.Require(amount.IsThere && amount.Weighed > Weight.Zero, "How many kilograms came? They lie above zero.", nameof(Movement.Weighed));
        Rule.Require(amount.Bags <= 100_000, "The bags lie between 0 and 100,000.", nameof(Movement.Bags));
        return Write(kind, amount, note, by, at);
    }

    /// <summary>
    /// Coffee that leaves, in bags and kilograms as weighed. Whole bags leave with what the papers say is in them; how that is
    /// told for part of an opened bag stands with <see cref="PackedShare"/>. Nothing as packed is left when the last of the coffee is gone.
    /// </summary>
    /// <param name="days">This holding's days, so that nothing leaves on a day on which it was not there, and what its bags hold by the papers.</param>
    /// <exception cref="RuleBrokenException">More than is available leaves, or less than nothing, or the reason is missing.</exception>
    public Movement Take(MovementKind kind, int bags, Weight weighed, RunningStock days, MovementNote note, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(days);
        Rule.Require(kind.IsOutward(), "Choose a release, a sample, a sale or a loss.", nameof(Movement.Kind));
        Rule.Require(weighed > Weight.Zero, "How many kilograms leave? They lie above zero.", nameof(Movement.Weighed));
        Rule.Require(bags >= 0, "The bags lie at zero or above: write 0 for part of an opened bag.", nameof(Movement.Bags));
        Rule.Require(bags <= Bags, string.Create(CultureInfo.InvariantCulture, $"There are {Bags:#,0} bags here, {bags:#,0} cannot leave."), nameof(Movement.Bags));
        var free = kind == MovementKind.Loss ? Weighed : Available;
        Rule.Require(weighed <= free, TooMuch(weighed, kind), nameof(Movement.Weighed));
        Rule.Require(weighed < Weighed || bags == Bags, string.Create(CultureInfo.InvariantCulture, $"With the last kilogram the last bag leaves: there are {Bags:#,0} bags."), nameof(Movement.Bags));
        Rule.Require(
            bags == 0 || bags < Bags || (Int128)(Weighed - weighed).Micrograms * Bags <= Weighed.Micrograms,
            string.Create(CultureInfo.InvariantCulture, $"With the last bag at most the rest of an opened one stays: {(Weighed - weighed).Kilograms:#,0.###} kg would lie here in no bag. Write fewer bags, or more kilograms."), nameof(Movement.Bags));
        var packed = PackedShare.Leaving(Amount, days.Bag, bags, weighed);
        WasThere(days, new StockAmount(bags, packed, weighed), note.On);
        return Write(kind, -new StockAmount(bags, packed, weighed), note, by, at);
    }

    /// <summary>
    /// What a count found: more or less bags and kilograms as weighed than the ledger says. Less than is reserved may be left,
    /// since the scales are right; the reserve then has to be let go.
    /// </summary>
    internal Movement Settle(int bags, Weight weighed, RunningStock days, MovementNote note, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require((Amount + new StockAmount(bags, Weight.Zero, weighed)).IsThere, "More is missing than was there.", nameof(Movement.Weighed));
        var packed = weighed < Weight.Zero
            ? Weight.Zero - PackedShare.Leaving(Amount, days.Bag, Math.Max(0, -bags), Weight.Zero - weighed)
            : PackedShare.Found(Amount, days.Bag, bags, weighed);
        var amount = new StockAmount(bags, packed, weighed);
        WasThere(days, -amount, note.On);
        return Write(weighed < Weight.Zero || (weighed == Weight.Zero && bags < 0) ? MovementKind.Loss : MovementKind.Gain, amount, note, by, at);
    }

    /// <summary>Moves coffee to the same lot's holding in another warehouse.</summary>
    /// <returns>The two halves, tied to each other.</returns>
    public (Movement Out, Movement In) Transfer(Holding to, int bags, Weight weighed, RunningStock days, MovementNote note, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(to);
        Rule.Require(to.LotId == LotId, "A transfer keeps the lot: choose a warehouse, not another lot.", nameof(Movement.LotId));
        Rule.Require(to.WarehouseId != WarehouseId, "It is in this warehouse already: choose another one.", nameof(Movement.WarehouseId));
        var left = Take(MovementKind.TransferOut, bags, weighed, days, note, by, at);
        var came = to.Write(MovementKind.TransferIn, -left.Amount, note, by, at);
        (left.TransferId, came.TransferId) = (came.Id, left.Id);
        return (left, came);
    }

    /// <summary>Takes back a movement of this holding by one that undoes it.</summary>
    /// <exception cref="RuleBrokenException">It was taken back, takes back another, or what it brought has left since.</exception>
    public Movement Reverse(Movement movement, bool isReversed, RunningStock days, MovementNote note, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(movement);
        Rule.Require(movement.HoldingId == Id, "This movement stands in another warehouse.", nameof(Movement.WarehouseId));
        Rule.Require(!isReversed, "This movement was taken back already.", nameof(Movement.ReversesId));
        Rule.Require(movement.Kind != MovementKind.Reversal, "What takes back is not taken back itself: write the movement again as it was.", nameof(Movement.ReversesId));
        Rule.Require(note.On >= movement.On, string.Create(CultureInfo.InvariantCulture, $"The movement is of {movement.On:d MMMM yyyy}: it cannot be taken back before."), nameof(Movement.On));
        var left = Amount - movement.Amount;
        Rule.Require(left.IsThere && left.Weighed >= Reserved, "Part of what this movement brought has left or is reserved since: take those back first.", nameof(Movement.ReversesId));
        if (movement.Weighed > Weight.Zero)
        {
            WasThere(days, movement.Amount, note.On);
        }

        var back = Write(MovementKind.Reversal, -movement.Amount, note, by, at);
        back.ReversesId = movement.Id;
        return back;
    }

    /// <summary>Keeps kilograms back for a use.</summary>
    /// <exception cref="RuleBrokenException">Less is available.</exception>
    public Reservation Reserve(Weight weight, string use, Id<Person> by, DateTimeOffset at, Id<Purpose>? purpose = null)
    {
        Rule.Require(weight > Weight.Zero, "How many kilograms are reserved? They lie above zero.", nameof(Reservation.Weight));
        Rule.Require(weight <= Available, string.Create(CultureInfo.InvariantCulture, $"Only {Available.Kilograms:#,0.###} kg are available here: reserve no more, or let another reserve go first."), nameof(Reservation.Weight));
        var reservation = new Reservation(this, weight, use, purpose, by, at);
        Reserved += weight;
        return reservation;
    }

    /// <summary>Lets go what was kept back.</summary>
    /// <exception cref="RuleBrokenException">It was let go already.</exception>
    public void Free(Reservation reservation, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(reservation);
        Rule.Require(reservation.HoldingId == Id, "This reserve stands in another warehouse.", nameof(Reservation.HoldingId));
        reservation.End(by, at);
        Reserved -= reservation.Weight;
    }

    /// <summary>
    /// A release for a purpose uses what was kept back for it, the oldest reserve first; what a reserve holds beyond that stays
    /// reserved for the same use.
    /// </summary>
    /// <param name="own">The open reserves of this holding for the purpose.</param>
    /// <returns>The rest of a reserve that was used in part; null where none is.</returns>
    public Reservation? Use(IReadOnlyList<Reservation> own, Weight released, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(own);
        foreach (var reservation in own.OrderBy(one => one.At))
        {
            if (released <= Weight.Zero)
            {
                break;
            }

            Free(reservation, by, at);
            if (reservation.Weight > released)
            {
                return Reserve(reservation.Weight - released, reservation.Use, by, at, reservation.PurposeId);
            }

            released -= reservation.Weight;
        }

        return null;
    }

    private static void WasThere(RunningStock days, StockAmount amount, DateOnly on) => Rule.Require(
        (days.LeastFrom(on) - amount).IsThere,
        string.Create(CultureInfo.InvariantCulture, $"On {on:d MMMM yyyy}, or on a day after it, less than {amount.Weighed.Kilograms:#,0.###} kg were there: give a later day, or less."),
        nameof(Movement.On));

    private Movement Write(MovementKind kind, StockAmount amount, MovementNote note, Id<Person> by, DateTimeOffset at)
    {
        Rule.Day(note.On, nameof(Movement.On));
        Rule.Require(note.On <= DateOnly.FromDateTime(at.UtcDateTime.AddHours(14)), "This day is still to come: write down what has happened.", nameof(Movement.On));
        var movement = new Movement(this, kind, amount, note, by, at);
        var left = Amount + amount;
        (Bags, Packed, Weighed) = (left.Bags, left.Packed, left.Weighed);
        return movement;
    }

    private string TooMuch(Weight weighed, MovementKind kind) => Reserved > Weight.Zero && weighed <= Weighed && kind != MovementKind.Loss
        ? string.Create(CultureInfo.InvariantCulture, $"{Weighed.Kilograms:#,0.###} kg are here, of which {Reserved.Kilograms:#,0.###} kg are reserved: let the reserve go first, or take at most {Available.Kilograms:#,0.###} kg.")
        : string.Create(CultureInfo.InvariantCulture, $"Only {Weighed.Kilograms:#,0.###} kg are here, {weighed.Kilograms:#,0.###} kg cannot leave.");
}
