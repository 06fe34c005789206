using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Papers;

/// <summary>Something that a person wrote down about a lot, an offer, a sample, a contract, a shipment or an arrival. A removed note can be put back.</summary>
public sealed class Note : IPaper
{
    public const int Longest = 4000;

    private Note() => Text = "";

    public Note(PapersOf about, Guid aboutId, string text, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(Enum.IsDefined(about) && aboutId != default, "Say what the note is about.", nameof(About));
        Id = Id<Note>.New();
        About = about;
        AboutId = aboutId;
        Text = Rule.Text(text, "The note", Longest, nameof(Text));
        By = by;
        At = at;
    }

    public Id<Note> Id { get; private set; }

    public int Version { get; private set; }

    public PapersOf About { get; private set; }

    /// <summary>The identity of the lot, offer, sample, contract, shipment or arrival.</summary>
    public Guid AboutId { get; private set; }

    public string Text { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public Id<Person>? RemovedBy { get; private set; }

    public DateTimeOffset? RemovedAt { get; private set; }

    public bool IsRemoved => RemovedAt is not null;

    public void Remove(Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!IsRemoved, "This note is removed already.");
        RemovedBy = by;
        RemovedAt = at;
    }

    public void PutBack()
    {
        Rule.Require(IsRemoved, "This note stands already.");
        RemovedBy = null;
        RemovedAt = null;
    }
}
