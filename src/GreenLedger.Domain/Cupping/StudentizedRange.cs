using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// The distribution of the range of several normal means over an independent standard deviation (Tukey's q), which
/// MathNet.Numerics lacks. Both of its integrals are smooth and die out at both ends, so that equal steps converge fast:
/// the figures agree to eight decimals with Student's t for two means and with adaptive integration in R for more.
/// </summary>
public static class StudentizedRange
{
    /// <summary>Beyond this many natural logarithms below its peak a density counts nothing: 2 × 10⁻¹⁴.</summary>
    private const double Vanishing = 31.5;

    /// <summary>Normal values beyond this many standard deviations count nothing.</summary>
    private const double Widest = 8;

    private const double InnerStep = 0.25;

    private static readonly (double Z, double Density, double Below)[] Normals = [.. Enumerable
        .Range(1, (int)(2 * Widest / InnerStep) - 1).Select(step => -Widest + step * InnerStep).Select(z => (z, Normal.PDF(0, 1, z), Normal.CDF(0, 1, z)))];

    /// <summary>Chance that the range of as many means exceeds q if all are alike.</summary>
    /// <param name="degreesOfFreedom">Of the standard deviation; infinite where it is known.</param>
    public static double UpperTail(double q, int means, double degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(means, 2);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(degreesOfFreedom);
        if (!(q > 0))
        {
            return double.IsNaN(q) ? double.NaN : 1;
        }

        if (double.IsInfinity(degreesOfFreedom))
        {
            return Exceeds(q, means);
        }

        // Over x = ln s, whose density is proportional to exp(ν (x − e²ˣ ÷ 2)) and peaks at 0.
        var half = degreesOfFreedom / 2;
        var peak = Math.Log(2) + half * Math.Log(half) - SpecialFunctions.GammaLn(half) - half;
        var step = Math.Min(0.2, 0.4 / Math.Sqrt(2 * degreesOfFreedom));
        var sum = 0.0;
        for (var x = -Reach(x => Fall(-x), degreesOfFreedom); x < 0 || Fall(x) * degreesOfFreedom > -Vanishing; x += step)
        {
            sum += Math.Exp(peak + degreesOfFreedom * Fall(x)) * Exceeds(q * Math.Exp(x), means);
        }

        return Math.Clamp(sum * step, 0, 1);
    }

    /// <summary>The q that is exceeded with this chance, such as 0.05.</summary>
    public static double Quantile(double upperTail, int means, double degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(upperTail);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(upperTail, 1);
        var high = 4.0;
        while (UpperTail(high, means, degreesOfFreedom) > upperTail)
        {
            high *= 2;
        }

        return Brent.FindRoot(q => UpperTail(q, means, degreesOfFreedom) - upperTail, 0, high, 1e-10);
    }

    /// <summary>1 − n ∫ φ(z) (Φ(z) − Φ(z − w))ⁿ⁻¹ dz: the range of n standard normal values exceeds w.</summary>
    private static double Exceeds(double width, int means)
    {
        if (width > 2 * Widest)
        {
            return 0;
        }

        var sum = 0.0;
        foreach (var (z, density, below) in Normals)
        {
            sum += density * Math.Pow(below - Normal.CDF(0, 1, z - width), means - 1);
        }

        return 1 - means * sum * InnerStep;
    }

    /// <summary>How far the log density lies below its peak, for one degree of freedom; never above 0.</summary>
    private static double Fall(double x) => x - Math.Exp(2 * x) / 2 + 0.5;

    private static double Reach(Func<double, double> fall, double degreesOfFreedom)
    {
        var most = Vanishing / degreesOfFreedom;
        return Bisection.FindRoot(x => fall(x) + most, 0, most + Math.Sqrt(most) + 1, 1e-3 * Math.Sqrt(most), 200);
    }
}
