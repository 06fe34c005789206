using System.Globalization;

namespace GreenLedger.Domain.Grading;

/// <summary>
/// Full defects in a sample, exact to the hundredth, because some rooms keep the fractions (2.70 is 270).
/// The <c>default</c> is none.
/// </summary>
public readonly record struct FullDefects(int Hundredths) : IComparable<FullDefects>
{
    public decimal Count => Hundredths / 100m;

    /// <exception cref="RuleBrokenException">The count is negative or above 10,000.</exception>
    public static FullDefects Of(decimal count)
    {
        Rule.Require(count is >= 0m and <= 10_000m, "Full defects lie between 0 and 10,000.", "FullDefects");
        return new FullDefects(decimal.ToInt32(Math.Round(count * 100m, 0, MidpointRounding.AwayFromZero)));
    }

    public static bool operator <(FullDefects left, FullDefects right) => left.Hundredths < right.Hundredths;

    public static bool operator <=(FullDefects left, FullDefects right) => left.Hundredths <= right.Hundredths;

    public static bool operator >(FullDefects left, FullDefects right) => left.Hundredths > right.Hundredths;

    public static bool operator >=(FullDefects left, FullDefects right) => left.Hundredths >= right.Hundredths;

    public int CompareTo(FullDefects other) => Hundredths.CompareTo(other.Hundredths);

    public override string ToString() => Count.ToString("0.##", CultureInfo.InvariantCulture);
}
