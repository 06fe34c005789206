namespace GreenLedger.Domain.Cupping.LayingOut;

/// <summary>Coffees that stand on the table under two codes, so that repeatability can be measured.</summary>
public static class HiddenDuplicates
{
    /// <summary>Our own choice, no source: a house may set another figure.</summary>
    public const int UsualSamplesPerDuplicate = 5;

    /// <summary>
    /// How many to propose: one for each five samples begun, from two samples on. One sample alone gets none, since its
    /// second cup would be known at once.
    /// </summary>
    public static int Proposed(int samples, int samplesPerDuplicate = UsualSamplesPerDuplicate)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(samplesPerDuplicate, 1);
        return samples < 2 ? 0 : (samples + samplesPerDuplicate - 1) / samplesPerDuplicate;
    }

    /// <summary>Which of the samples, counted from 0, are poured a second time: by chance, each at most once.</summary>
    /// <exception cref="RuleBrokenException">More duplicates than samples.</exception>
    public static IReadOnlyList<int> Choose(int samples, int duplicates, Random random)
    {
        ArgumentNullException.ThrowIfNull(random);
        ArgumentOutOfRangeException.ThrowIfNegative(duplicates);
        Rule.Require(duplicates <= samples, $"Of {samples} samples at most {samples} can be poured twice.", nameof(duplicates));
        var places = Enumerable.Range(0, samples).ToArray();
        random.Shuffle(places);
        return [.. places[..duplicates].Order()];
    }
}
