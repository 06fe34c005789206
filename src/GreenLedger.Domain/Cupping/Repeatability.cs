using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// How far one cupper's scores of one coffee spread, from coffees cupped under more than one code in a session: the pooled
/// standard deviation within cupper and coffee (handbook quality.md section 4.4, s_r).
/// </summary>
/// <param name="Deviation">One standard deviation, in points.</param>
/// <param name="DegreesOfFreedom">Scores beyond the first of each cupper for each coffee.</param>
/// <param name="Low">Lower end of the 95 % interval by chi-squared; <paramref name="High"/> the upper.</param>
public sealed record Repeatability(double Deviation, int DegreesOfFreedom, double Low, double High)
{
    private const double Confidence = 0.95;

    /// <summary>Over all cuppers; null where nobody cupped a coffee twice. Equal scores sheet for sheet give 0 to 0.</summary>
    public static Repeatability? Of(IEnumerable<PanelScore> scores) => Pooled([scores]);

    /// <summary>Each cupper who cupped a coffee twice.</summary>
    public static IReadOnlyDictionary<int, Repeatability> OfEach(IReadOnlyList<PanelScore> scores) => scores
        .GroupBy(score => score.Cupper)
        .Select(own => (own.Key, Found: Of(own)))
        .Where(own => own.Found is not null)
        .ToDictionary(own => own.Key, own => own.Found!);

    /// <summary>Over several sessions: a coffee's level may differ between them, so each session keeps its own means.</summary>
    public static Repeatability? Pooled(IEnumerable<IEnumerable<PanelScore>> sessions)
    {
        var repeats = sessions.SelectMany(scores => scores.GroupBy(score => (score.Cupper, score.Sample))
            .Select(group => group.Select(score => score.Points).ToList())).Where(points => points.Count > 1).ToList();
        var freedom = repeats.Sum(points => points.Count - 1);
        if (freedom == 0)
        {
            return null;
        }

        var squares = repeats.Sum(points => points.Sum(value => Math.Pow(value - points.Average(), 2)));
        var deviation = Math.Sqrt(squares / freedom);
        var (low, high) = Factors(freedom);
        return new Repeatability(deviation, freedom, low * deviation, high * deviation);
    }

    /// <summary>Between which multiples of the standard deviation found the true one lies, with 95 % confidence.</summary>
    public static (double Low, double High) Factors(int degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(degreesOfFreedom, 1);
        return (Factor(0.5 + Confidence / 2), Factor(0.5 - Confidence / 2));

        double Factor(double share) => Math.Sqrt(degreesOfFreedom / ChiSquared.InvCDF(degreesOfFreedom, share));
    }
}
