using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// A share in per cent, exact to the ten-thousandth of one per cent (10.8 % is 108000): moisture, weight loss,
/// interest and duty rates. The <c>default</c> is 0 %.
/// </summary>
public readonly record struct Percent(long TenThousandths) : IComparable<Percent>, IParsable<Percent>
{
    /// <summary>10.8 for 10.8 %.</summary>
    public decimal Points => TenThousandths / 10_000m;

    /// <summary>0.108 for 10.8 %.</summary>
    public decimal Fraction => Points / 100m;

    /// <exception cref="RuleBrokenException">The value lies outside −1000 % to 1000 %.</exception>
    public static Percent Of(decimal points)
    {
        Rule.Require(points is >= -1000m and <= 1000m, "This percentage is out of range: please check it.", "Percent");
        return new Percent(decimal.ToInt64(Math.Round(points * 10_000m, 0, MidpointRounding.AwayFromZero)));
    }

    public static bool operator <(Percent left, Percent right) => left.TenThousandths < right.TenThousandths;

    public static bool operator <=(Percent left, Percent right) => left.TenThousandths <= right.TenThousandths;

    public static bool operator >(Percent left, Percent right) => left.TenThousandths > right.TenThousandths;

    public static bool operator >=(Percent left, Percent right) => left.TenThousandths >= right.TenThousandths;

    public int CompareTo(Percent other) => TenThousandths.CompareTo(other.TenThousandths);

    public override string ToString() => Points.ToString("0.####", CultureInfo.InvariantCulture) + " %";

    public static Percent Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var percent) ? percent : throw new FormatException($"'{s}' is not a percentage.");

    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Percent result)
    {
        result = default;
        var text = (s ?? "").Trim().TrimEnd('%').Trim();
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        if (!decimal.TryParse(text, style, CultureInfo.InvariantCulture, out var points) || points is < -1000m or > 1000m)
        {
            return false;
        }

        result = Of(points);
        return true;
    }
}
