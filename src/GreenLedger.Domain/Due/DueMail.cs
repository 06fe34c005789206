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

    /// <summary>It is wished for again; a day that it was looked at before stays taken.</summary>
    public void Resume(DateTimeOffset at) => (At, EndedAt, Trouble) = (at, null, null);

    public void End(DateTimeOffset at) => EndedAt = at;

    public Id<Person> OwnerId { get; private set; }

    /// <summary>When the person wished for it.</summary>
    public DateTimeOffset At { get; private set; }

    /// <summary>When the person ended it; null while it is wished for.</summary>
    public DateTimeOffset? EndedAt { get; private set; }

    /// <summary>Why the last one could not be written; null where it could.</summary>
    public string? Trouble { get; private set; }

    /// <summary>The house's day for which it was looked at last, whether anything was due or not; null while it never was.</summary>
    public DateOnly? LastDay { get; private set; }
}
