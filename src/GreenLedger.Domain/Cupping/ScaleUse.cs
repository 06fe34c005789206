namespace GreenLedger.Domain.Cupping;

/// <summary>
/// How a cupper uses the scale beside the others: sums of squares and products of own sample means and those of the
/// others, each around its mean in a session, so that sessions add up.
/// </summary>
/// <param name="Samples">Sample means less one a session: the degrees of freedom.</param>
public readonly record struct ScaleUse(double Together, double Own, double Others, int Samples)
{
    /// <summary>Of own means on the others': below 1 the cupper compresses the scale, above 1 stretches it. NaN without spread.</summary>
    public double Slope => Together / Others;

    public double Correlation => Together / Math.Sqrt(Own * Others);

    /// <summary>Spread of own sample means over the spread of the others'; unlike the slope it does not fall with disagreement.</summary>
    public double DeviationRatio => Math.Sqrt(Own / Others);

    /// <param name="own">The cupper's mean for each sample, and in <paramref name="others"/> that of everyone else.</param>
    public static ScaleUse Of(IReadOnlyList<double> own, IReadOnlyList<double> others)
    {
        double mine = own.Average(), theirs = others.Average();
        return new ScaleUse(
            own.Zip(others, (one, other) => (one - mine) * (other - theirs)).Sum(),
            own.Sum(value => (value - mine) * (value - mine)),
            others.Sum(value => (value - theirs) * (value - theirs)),
            own.Count - 1);
    }

    public static ScaleUse operator +(ScaleUse one, ScaleUse other) => Add(one, other);

    public static ScaleUse Add(ScaleUse one, ScaleUse other) =>
        new(one.Together + other.Together, one.Own + other.Own, one.Others + other.Others, one.Samples + other.Samples);
}
