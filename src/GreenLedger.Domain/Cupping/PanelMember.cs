using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Cupping;

/// <summary>Somebody at the table of a session: who cups, in which order, and who pours.</summary>
public sealed class PanelMember
{
    private readonly List<int> _servingOrder = [];

    private PanelMember()
    {
    }

    internal PanelMember(Id<Person> personId, int seat, bool pours, IEnumerable<int> servingOrder, DateTimeOffset? joinedAt)
    {
        PersonId = personId;
        Seat = seat;
        Pours = pours;
        JoinedAt = joinedAt;
        _servingOrder.AddRange(servingOrder);
    }

    public Id<Person> PersonId { get; private set; }

    /// <summary>Counts the members in the order in which they were put on the panel, from 1.</summary>
    public int Seat { get; private set; }

    /// <summary>Weighs, grinds or pours, and therefore may open the key.</summary>
    public bool Pours { get; private set; }

    /// <summary>Hands in sheets; who cups and also pours may open the key, and is then marked as not blind.</summary>
    public bool Cups => _servingOrder.Count > 0;

    /// <summary>Places on the table in the order in which this cupper tastes, one flight after the other; empty for who does not cup.</summary>
    public IReadOnlyList<int> ServingOrder => _servingOrder;

    /// <summary>When a latecomer was added; null for who was on the panel when the session was laid out.</summary>
    public DateTimeOffset? JoinedAt { get; private set; }

    internal void Pour() => Pours = true;
}
