using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Trace;

/// <summary>
/// A recall that is held to see whether coffee can be found, against the clock. What was found is frozen when it ends; whoever
/// audits the house reads it years later. A real recall follows the rules of the food authority.
/// </summary>
public sealed class MockRecall
{
    private MockRecall() => Ref = StartName = Reason = "";

    /// <exception cref="RuleBrokenException">It has no reason.</exception>
    public MockRecall(string @ref, TraceFrom from, Guid startId, string startName, string? reason, Id<Person> by, DateTimeOffset at)
        : this()
    {
        Rule.Require(Enum.IsDefined(from), "Choose what is recalled: a lot, a plot or a shipment.", nameof(From));
        Id = Id<MockRecall>.New();
        Ref = Rule.Text(@ref, "The number of the recall", 20, nameof(Ref));
        (From, StartId) = (from, startId);
        StartName = Rule.Text(startName.Length > 200 ? startName[..200] : startName, "What is recalled", 200, nameof(StartName));
        Reason = Rule.Text(reason, "The reason", 500, nameof(Reason));
        (StartedBy, StartedAt) = (by, at);
    }

    public Id<MockRecall> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>The house's own number of it: M26-001.</summary>
    public string Ref { get; private set; }

    public TraceFrom From { get; private set; }

    public Guid StartId { get; private set; }

    /// <summary>What is recalled, as it was called then.</summary>
    public string StartName { get; private set; }

    public string Reason { get; private set; }

    public Id<Person> StartedBy { get; private set; }

    public DateTimeOffset StartedAt { get; private set; }

    public Id<Person>? EndedBy { get; private set; }

    public DateTimeOffset? EndedAt { get; private set; }

    /// <summary>As it was found when it ended; null while it runs.</summary>
    public RecallFindings? Findings { get; private set; }

    /// <summary>What went well and what is to be done better.</summary>
    public string? Learned { get; private set; }

    public bool HasEnded => EndedAt is not null;

    /// <summary>How long it took; null while it runs.</summary>
    public TimeSpan? Took => EndedAt - StartedAt;

    /// <exception cref="RuleBrokenException">It has ended already.</exception>
    public void End(RecallFindings findings, string? learned, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(findings);
        Rule.Require(!HasEnded, $"{Ref} has ended and stays as it is: hold another one.", nameof(EndedAt));
        Rule.Require(at >= StartedAt, "It cannot end before it started.", nameof(EndedAt));
        Learned = Rule.OptionalText(learned, "What was learned", 2000, nameof(Learned));
        (Findings, EndedBy, EndedAt) = (findings, by, at);
    }
}
