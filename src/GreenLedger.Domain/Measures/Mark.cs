using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// What one cupper wrote for one attribute on a score sheet, in exact hundredths (8.25 is 825).
/// The <c>default</c> is a mark of zero.
/// </summary>
public readonly record struct Mark(int Hundredths) : IComparable<Mark>, IParsable<Mark>
{
    public decimal Points => Hundredths / 100m;

    /// <exception cref="RuleBrokenException">The points have more than two decimals or lie outside 0 to 100.</exception>
    public static Mark Of(decimal points)
    {
        Rule.Require(points is >= 0m and <= 100m, "A mark lies between 0 and 100 points.", "Mark");
        Rule.Require(points * 100m == Math.Truncate(points * 100m), "A mark has at most two decimals.", "Mark");
        return new Mark(decimal.ToInt32(points * 100m));
    }

    public static bool operator <(Mark left, Mark right) => left.Hundredths < right.Hundredths;

    public static bool operator <=(Mark left, Mark right) => left.Hundredths <= right.Hundredths;

    public static bool operator >(Mark left, Mark right) => left.Hundredths > right.Hundredths;

    public static bool operator >=(Mark left, Mark right) => left.Hundredths >= right.Hundredths;

    public int CompareTo(Mark other) => Hundredths.CompareTo(other.Hundredths);

    public override string ToString() => Points.ToString("0.00", CultureInfo.InvariantCulture);

    public static Mark Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var mark) ? mark : throw new FormatException($"'{s}' is not a mark.");

    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Mark result)
    {
        result = default;
        const NumberStyles style = NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;
        if (!decimal.TryParse(s, style, CultureInfo.InvariantCulture, out var points)
            || points is < 0m or > 100m
            || points * 100m != Math.Truncate(points * 100m))
        {
            return false;
        }

        result = new Mark(decimal.ToInt32(points * 100m));
        return true;
    }
}
