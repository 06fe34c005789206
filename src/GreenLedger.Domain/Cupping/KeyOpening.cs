using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Cupping;

/// <summary>Somebody looked up which sample stands behind which code while the session was open.</summary>
public sealed class KeyOpening
{
    private KeyOpening()
    {
    }

    internal KeyOpening(Id<Person> by, DateTimeOffset at)
    {
        Id = Id<KeyOpening>.New();
        By = by;
        At = at;
    }

    public Id<KeyOpening> Id { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }
}
