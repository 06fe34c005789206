namespace GreenLedger.Domain.Choosing;

/// <summary>What to do with a lot.</summary>
public enum Outcome
{
    Buy = 0,

    /// <summary>Not yet: something is missing or another lot is better on both counts.</summary>
    Hold = 1,

    Decline = 2,
}

public static class Outcomes
{
    public static string Word(this Outcome outcome) => outcome switch
    {
        Outcome.Buy => "buy",
        Outcome.Hold => "hold",
        Outcome.Decline => "decline",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome)),
    };
}

/// <summary>
/// What the rules say about a lot, with the reasons in words. A "no" is a value and not an error: the buyer may decide
/// otherwise and says why.
/// </summary>
public sealed record Advice(Outcome Outcome, IReadOnlyList<string> Reasons)
{
    /// <summary>
    /// Decline what fails a gate. Hold what lacks a score, a cost or a measurement, what was scored on another form, and
    /// what another ranked lot beats in score and cost. Buy what is on the efficient front.
    /// </summary>
    public static Advice On(ShortlistEntry entry, Shortlist shortlist)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(shortlist);
        var words = new ShortlistWords(shortlist);
        if (entry.Standing == Standing.OtherForm)
        {
            return new Advice(Outcome.Hold, [ShortlistWords.OtherForm(entry)]);
        }

        if (entry.Standing == Standing.Failed)
        {
            var failures = words.Failures(entry);
            return new Advice(ShortlistWords.IsMissingOnly(entry) ? Outcome.Hold : Outcome.Decline, failures);
        }

        return entry.IsOnFront
            ? new Advice(Outcome.Buy, [words.Place(entry), words.Front(entry)])
            : new Advice(Outcome.Hold, [words.Place(entry), words.Front(entry)]);
    }
}
