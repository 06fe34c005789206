using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Due;

/// <summary>A person's wish for a daily mail of what is due to them.</summary>
public sealed class DueMail
{
    private DueMail()
    {
    }

    public DueMail(Id<Person> owner, DateTimeOffset at)
    {
        Id = Id<DueMail>.New();
        (OwnerId, At) = (owner, at);
    }

    public Id<DueMail> Id { get; private set; }

    public Id<Person> OwnerId { get; private set; }

    /// <summary>When the person wished for it.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>The house's day for which it was looked at last, whether anything was due or not; null while it never was.</summary>
    public DateOnly? LastDay { get; private set; }
}
