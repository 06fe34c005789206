using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// What the house expects of a panel that has too few sheets to show its own error: one standard deviation between
/// cuppers (reproducibility) and of one cupper on the same coffee twice (repeatability), in points.
/// </summary>
public sealed record ExpectedErrors(double Reproducibility, double Repeatability)
{
    /// <summary>
    /// Under this many residual degrees of freedom a panel's own error is not used: with fewer, cuppers who happen to
    /// agree to the quarter point would look exact. Our own choice, no source.
    /// </summary>
    public const int LeastDegreesOfFreedom = 3;

    public static ExpectedErrors Of(House house)
    {
        ArgumentNullException.ThrowIfNull(house);
        return Of(house.Reproducibility, house.Repeatability);
    }

    public static ExpectedErrors Of(Score reproducibility, Score repeatability) =>
        new((double)reproducibility.Points, (double)repeatability.Points);

    /// <summary>Variance between cuppers beyond what one cupper repeats: s_L² = s_R² − s_r² (ISO 5725-2), at least 0.</summary>
    public double BetweenCuppers => Math.Max(0, Reproducibility * Reproducibility - Repeatability * Repeatability);
}
