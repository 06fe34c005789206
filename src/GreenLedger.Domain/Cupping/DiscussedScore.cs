using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// A score that cuppers agreed on in talk after their session was closed, with who wrote it down, when and why. It stands
/// beside the fitted score and never in its place: whoever heard the others is no longer an independent judge.
/// </summary>
public sealed class DiscussedScore
{
    private DiscussedScore()
    {
        Reason = "";
    }

    internal DiscussedScore(Id<Sample> sampleId, Score points, string reason, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<DiscussedScore>.New();
        SampleId = sampleId;
        Points = points;
        Reason = Rule.Text(reason, "Why the talk came to this score", 500, nameof(Reason));
        By = by;
        At = at;
    }

    public Id<DiscussedScore> Id { get; private set; }

    public Id<Sample> SampleId { get; private set; }

    public Score Points { get; private set; }

    public string Reason { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>Why it no longer counts; null while it does.</summary>
    public string? WithdrawnBecause { get; private set; }

    public Id<Person>? WithdrawnBy { get; private set; }

    public DateTimeOffset? WithdrawnAt { get; private set; }

    public bool IsWithdrawn => WithdrawnAt is not null;

    /// <summary>Takes it out of everything that is counted; it stays with who, when and why.</summary>
    /// <exception cref="RuleBrokenException">It was withdrawn before, or no reason is given.</exception>
    internal void Withdraw(string? reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!IsWithdrawn, "This discussed score was already withdrawn.", nameof(WithdrawnBecause));
        WithdrawnBecause = Rule.Text(reason, "The reason for withdrawing", 500, nameof(WithdrawnBecause));
        (WithdrawnBy, WithdrawnAt) = (by, at);
    }
}
