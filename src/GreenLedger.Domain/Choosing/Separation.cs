namespace GreenLedger.Domain.Choosing;

/// <summary>Two neighbours on the efficient front whose scores are not told apart.</summary>
public sealed record CloseNeighbours(ShortlistEntry Cheaper, ShortlistEntry Dearer)
{
    /// <summary>In the words of handbook quality.md section 5; a seller's score is not a cupping of ours.</summary>
    public string Says => Cheaper.Score!.Value.Origin == ScoreOrigin.Cupped && Dearer.Score!.Value.Origin == ScoreOrigin.Cupped
        ? "not separated by this cupping"
        : "not separated by these scores";
}

/// <summary>
/// Whether the step up to the next lot of the front buys a better cup for sure: it does not while the 95 % intervals of
/// the two overlap (handbook quality.md section 5, last line).
/// </summary>
public static class Separation
{
    /// <param name="front">The efficient front, cheapest first. Two offers of one lot have one score and are passed over.</param>
    public static IReadOnlyList<CloseNeighbours> Of(IReadOnlyList<ShortlistEntry> front) =>
        [.. front.Zip(front.Skip(1), (cheaper, dearer) => new CloseNeighbours(cheaper, dearer)).Where(AreClose)];

    private static bool AreClose(CloseNeighbours pair)
    {
        var (cheaper, dearer) = (pair.Cheaper.Score!.Value, pair.Dearer.Score!.Value);
        return pair.Cheaper.Candidate.LotId != pair.Dearer.Candidate.LotId && cheaper.High >= dearer.Low && dearer.High >= cheaper.Low;
    }
}
