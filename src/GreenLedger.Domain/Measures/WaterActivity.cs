using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// How free the water in the beans is, from 0 (dry) to 1 (pure water), exact to the ten-thousandth (0.58 is 5800).
/// The <c>default</c> is 0.
/// </summary>
public readonly record struct WaterActivity(int TenThousandths) : IComparable<WaterActivity>, IParsable<WaterActivity>
{
    public decimal Ratio => TenThousandths / 10_000m;

    /// <summary>Rounded half away from zero to the ten-thousandth.</summary>
    /// <exception cref="RuleBrokenException">The value lies outside 0 to 1.</exception>
    public static WaterActivity Of(decimal ratio)
    {
        Rule.Require(ratio is >= 0m and <= 1m, "Water activity lies between 0 and 1: write 0.58, not 58.", "WaterActivity");
        return new WaterActivity(decimal.ToInt32(Math.Round(ratio * 10_000m, 0, MidpointRounding.AwayFromZero)));
    }

    public static bool operator <(WaterActivity left, WaterActivity right) => left.TenThousandths < right.TenThousandths;

    public static bool operator <=(WaterActivity left, WaterActivity right) => left.TenThousandths <= right.TenThousandths;

    public static bool operator >(WaterActivity left, WaterActivity right) => left.TenThousandths > right.TenThousandths;

    public static bool operator >=(WaterActivity left, WaterActivity right) => left.TenThousandths >= right.TenThousandths;

    public int CompareTo(WaterActivity other) => TenThousandths.CompareTo(other.TenThousandths);

    public override string ToString() => Ratio.ToString("0.00##", CultureInfo.InvariantCulture);

    public static WaterActivity Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var activity) ? activity : throw new FormatException($"'{s}' is not a water activity.");

    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out WaterActivity result)
    {
        result = default;
        if (!decimal.TryParse(s, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var ratio)
            || ratio > 1m)
        {
            return false;
        }

        result = Of(ratio);
        return true;
    }
}
