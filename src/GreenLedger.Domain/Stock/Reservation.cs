using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Stock;

/// <summary>Kilograms of a lot in a warehouse that are kept back for a use, until they are let go.</summary>
public sealed class Reservation
{
    private Reservation() => Use = "";

    internal Reservation(Holding holding, Weight weight, string use, Id<Purpose>? purpose, Id<Person> by, DateTimeOffset at)
        : this()
    {
        Id = Id<Reservation>.New();
        HoldingId = holding.Id;
        Weight = weight;
        Use = Rule.Text(use, "What it is reserved for", 120, nameof(Use));
        (PurposeId, By, At) = (purpose, by, at);
    }

    public Id<Reservation> Id { get; private set; }

    public int Version { get; private set; }

    public Id<Holding> HoldingId { get; private set; }

    public Weight Weight { get; private set; }

    /// <summary>The name of the purpose, or the batch, that it waits for.</summary>
    public string Use { get; private set; }

    /// <summary>Null where it is kept for something else than a purpose.</summary>
    public Id<Purpose>? PurposeId { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public Id<Person>? EndedBy { get; private set; }

    public DateTimeOffset? EndedAt { get; private set; }

    internal void End(Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(EndedAt is null, "This reserve was let go already.", nameof(EndedAt));
        (EndedBy, EndedAt) = (by, at);
    }
}
