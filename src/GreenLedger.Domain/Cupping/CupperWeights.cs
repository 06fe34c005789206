using System.Globalization;

namespace GreenLedger.Domain.Cupping;

/// <summary>The rule and what it is held against: each cupper's repeatability over past sessions, by <see cref="ScoreSheet.CupperKey"/>.</summary>
public sealed record PanelWeights(CupperWeights Rule, IReadOnlyDictionary<string, Repeatability> Records)
{
    public CupperWeight Of(string cupperKey) => Rule.Of(Records.GetValueOrDefault(cupperKey));
}

/// <summary>What one cupper's sheets count, above 0 and at most 1, and why.</summary>
public sealed record CupperWeight(double Weight, string Reason);

/// <summary>
/// The buyer's rule by which cuppers who repeat badly count less: a cupper whose own repeatability is worse than the stated
/// one counts (stated ÷ own)², the inverse of how much more such scores spread; everyone else counts 1.
/// </summary>
public sealed record CupperWeights(double Stated)
{
    /// <summary>
    /// Under this many repeats a cupper's repeatability is not held against the cupper: with 10, the true figure lies
    /// between 0.70 and 1.75 times the one found. Our own choice, no source.
    /// </summary>
    public const int LeastRepeats = 10;

    /// <summary>No cupper counts less, so that one stays visible in the fit. Our own choice, no source.</summary>
    public const double Least = 0.1;

    public string Rule => string.Create(CultureInfo.InvariantCulture, $"Cuppers whose repeatability over past sessions is worse than {Stated:0.00} points count ({Stated:0.00} ÷ own)², at least {Least:0.0}; all others, and those with fewer than {LeastRepeats} repeats, count 1.");

    /// <param name="record">The cupper's repeatability over past sessions; null where nothing was cupped twice.</param>
    public CupperWeight Of(Repeatability? record)
    {
        Domain.Rule.Require(Stated is > 0 and <= 10, "State a repeatability above 0 and at most 10 points.", nameof(Stated));
        if (record is null || record.DegreesOfFreedom < LeastRepeats)
        {
            return new CupperWeight(1, $"Counts 1: {record?.DegreesOfFreedom ?? 0} repeats so far, {LeastRepeats} are needed to judge.");
        }

        var own = string.Create(CultureInfo.InvariantCulture, $"repeats within {record.Deviation:0.00} points ({record.DegreesOfFreedom} repeats)");
        if (record.Deviation <= Stated)
        {
            return new CupperWeight(1, $"Counts 1: {own}.");
        }

        var weight = Math.Max(Least, Math.Pow(Stated / record.Deviation, 2));
        return new CupperWeight(weight, string.Create(CultureInfo.InvariantCulture, $"Counts {weight:0.00}: {own}."));
    }
}
