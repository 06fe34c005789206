using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Archive;

/// <summary>Somebody took the whole house along as an archive.</summary>
public sealed class ArchiveTaking
{
    private ArchiveTaking()
    {
    }

    public ArchiveTaking(Id<Person> by, DateTimeOffset at)
    {
        Id = Id<ArchiveTaking>.New();
        (By, At) = (by, at);
    }

    public Id<ArchiveTaking> Id { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }
}
