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
}
