namespace GreenLedger.Domain.Cupping;

/// <summary>
/// A chart of single values in order of time with limits of three standard deviations, these from the mean moving range
/// (NIST/SEMATECH handbook 6.3.2.2; handbook quality.md section 4.11). The limits come from the first values, the base
/// period, and then stay: a slow drift would otherwise widen its own limits.
/// </summary>
/// <param name="BasePeriod">How many of the first values the limits come from.</param>
/// <param name="IsFrozen">False while the base period is still filling: the limits will move.</param>
public sealed record ControlChart(
    IReadOnlyList<double> Values, int BasePeriod, bool IsFrozen, double Mean, double Lower, double Upper)
{
    /// <summary>With fewer values there are no limits. Our own choice, no source.</summary>
    public const int LeastValues = 10;

    /// <summary>20 and more are preferred (handbook quality.md section 4.11).</summary>
    public const int UsualBasePeriod = 20;

    /// <summary>Mean range of two normal values in standard deviations (d₂).</summary>
    private const double RangeOfTwo = 1.128;

    /// <summary>Places of the values outside the limits, counted from 0.</summary>
    public IReadOnlyList<int> Outside => [.. Enumerable.Range(0, Values.Count).Where(place => Values[place] < Lower || Values[place] > Upper)];

    /// <summary>Null with fewer than <see cref="LeastValues"/> values.</summary>
    public static ControlChart? Of(IReadOnlyList<double> values, int basePeriod = UsualBasePeriod)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentOutOfRangeException.ThrowIfLessThan(basePeriod, LeastValues);
        if (values.Count < LeastValues)
        {
            return null;
        }

        var first = values.Take(basePeriod).ToList();
        var range = first.Zip(first.Skip(1), (before, after) => Math.Abs(after - before)).Average();
        var (mean, reach) = (first.Average(), 3 * range / RangeOfTwo);
        return new ControlChart(values, first.Count, values.Count >= basePeriod, mean, mean - reach, mean + reach);
    }
}
