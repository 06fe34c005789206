using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Stock;

/// <summary>Why and when coffee moves, as whoever wrote it down says it.</summary>
/// <param name="On">The day on which it happened; not after today.</param>
/// <param name="Document">The number of the delivery note, roast batch or invoice.</param>
/// <param name="For">The purpose that a release names; null where it names none.</param>
public sealed record MovementNote(DateOnly On, string? Document, string? Reason, Id<Purpose>? For = null);

/// <summary>
/// A line of the stock ledger: so much of a lot came into a warehouse or left it. Lines are only added; a wrong one is taken
/// back by a line of its own (handbook, trade 9.2). The database refuses to change or remove one.
/// </summary>
public sealed class Movement
{
    private Movement()
    {
    }

    internal Movement(Holding holding, MovementKind kind, StockAmount amount, MovementNote note, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<Movement>.New();
        HoldingId = holding.Id;
        (LotId, WarehouseId) = (holding.LotId, holding.WarehouseId);
        Kind = kind;
        (Bags, Packed, Weighed) = (amount.Bags, amount.Packed, amount.Weighed);
        On = note.On;
        Document = Rule.OptionalText(note.Document, "The document", 80, nameof(Document));
        Reason = kind.NeedsReason() ? Rule.Text(note.Reason, "The reason", 500, nameof(Reason)) : Rule.OptionalText(note.Reason, "The reason", 500, nameof(Reason));
        Rule.Require(note.For is null || kind == MovementKind.Release, "Only a release to roasting names what it is for.", nameof(PurposeId));
        (PurposeId, By, At) = (note.For, by, at);
    }

    public Id<Movement> Id { get; private set; }

    public Id<Holding> HoldingId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    public Id<Warehouse> WarehouseId { get; private set; }

    public MovementKind Kind { get; private set; }

    /// <summary>Below zero for what left.</summary>
    public int Bags { get; private set; }

    /// <summary>By the papers; below zero for what left.</summary>
    public Weight Packed { get; private set; }

    /// <summary>By the scales; below zero for what left.</summary>
    public Weight Weighed { get; private set; }

    public DateOnly On { get; private set; }

    public string? Document { get; private set; }

    public string? Reason { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>The arrival that it comes from; null for anything but a receipt.</summary>
    public Id<Arrival>? ArrivalId { get; internal set; }

    /// <summary>What the coffee was released for; null for anything but a release, and where it names none.</summary>
    public Id<Purpose>? PurposeId { get; private set; }

    /// <summary>The other half of a transfer.</summary>
    public Id<Movement>? TransferId { get; internal set; }

    /// <summary>The movement that this one takes back.</summary>
    public Id<Movement>? ReversesId { get; internal set; }

    public StockAmount Amount => new(Bags, Packed, Weighed);
}
