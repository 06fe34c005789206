namespace GreenLedger.Domain.Cupping;

/// <summary>How much the cuppers of a session could know of what was in the cups.</summary>
public enum Blindness
{
    /// <summary>Others poured, and nobody on the panel opened the key while the session was open.</summary>
    Blind = 0,

    /// <summary>One cupper shuffled bowls with codes underneath and read them after the sheets were in.</summary>
    ShuffledAlone = 1,

    /// <summary>Somebody who scored had opened the key.</summary>
    SomeNotBlind = 2,

    /// <summary>The cuppers knew what they cupped.</summary>
    Open = 3,
}

/// <summary>Scores as the buyer's rule for cuppers who were not blind sorts them.</summary>
/// <param name="Counted">Enter the fit.</param>
/// <param name="LeftOut">Stay on their sheets and are shown, but do not enter the fit.</param>
/// <param name="WithoutScore">Samples that only cuppers who were not blind scored, and that therefore have no result.</param>
public sealed record CountedScores(
    IReadOnlyList<PanelScore> Counted, IReadOnlyList<PanelScore> LeftOut, IReadOnlyList<int> WithoutScore, string Sentence);

/// <summary>Whether the scores of cuppers who had opened the key while they scored count: the buyer's choice.</summary>
public sealed record BlindRule(bool LeavesOut)
{
    /// <param name="notBlind">The cuppers who were not blind, by their places among the scores.</param>
    /// <param name="names">What to call each cupper.</param>
    public CountedScores Of(IReadOnlyList<PanelScore> scores, IReadOnlySet<int> notBlind, IReadOnlyList<string> names)
    {
        ArgumentNullException.ThrowIfNull(scores);
        ArgumentNullException.ThrowIfNull(notBlind);
        ArgumentNullException.ThrowIfNull(names);
        var knew = scores.Select(score => score.Cupper).Distinct().Where(notBlind.Contains).Order().Select(cupper => names[cupper]).ToList();
        if (knew.Count == 0)
        {
            return new CountedScores(scores, [], [], "Nobody who scored had opened the key.");
        }

        var blind = scores.Where(score => !notBlind.Contains(score.Cupper)).ToList();
        var marked = $"{string.Join(", ", knew)} opened the key and {(knew.Count == 1 ? "is" : "are")} marked not blind";
        if (!LeavesOut)
        {
            return new CountedScores(scores, [], [], $"{marked}; by the house's rule the scores count all the same.");
        }

        if (blind.Count == 0)
        {
            return new CountedScores(scores, [], [], $"{marked}; nobody scored blind, so that the scores count although the house's rule leaves them out.");
        }

        var left = scores.Where(score => notBlind.Contains(score.Cupper)).ToList();
        int[] without = [.. left.Select(score => score.Sample).Except(blind.Select(score => score.Sample)).Order()];
        var lost = without.Length switch { 0 => "", 1 => " One sample was scored by nobody else and has no result.", var many => $" {many} samples were scored by nobody else and have no result." };
        return new CountedScores(blind, left, without, $"{marked}; by the house's rule the scores are shown but not counted.{lost}");
    }

    /// <summary>What a result says of its blindness.</summary>
    public static string Says(Blindness blindness) => blindness switch
    {
        Blindness.Blind => "Blind: nobody on the panel could know what was in the cups.",
        Blindness.ShuffledAlone => "Blind as far as one person can be: the cupper shuffled bowls with codes underneath and read the codes after the sheets were in. Whoever poured may still recognise a bowl.",
        Blindness.SomeNotBlind => "Not blind throughout: somebody who scored had opened the key.",
        Blindness.Open => "Open: the cupper knew the coffee. Take the score as a note, not as a blind result.",
        _ => throw new ArgumentOutOfRangeException(nameof(blindness)),
    };
}
