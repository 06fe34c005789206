using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// The total of a sheet or the result of a panel, in points of its form, kept to the millionth so that gates test the
/// unrounded value: 79.9167 is not 80. Scores of different forms are not comparable; whoever holds a score names its
/// form. The <c>default</c> is a score of zero.
/// </summary>
public readonly record struct Score(long Millionths) : IComparable<Score>, IParsable<Score>
{
    private const decimal Million = 1_000_000m;

    public decimal Points => Millionths / Million;

    /// <summary>Rounded half away from zero to the millionth of a point.</summary>
    /// <exception cref="RuleBrokenException">The score lies outside −100 to 100.</exception>
    public static Score Of(decimal points)
    {
        Rule.Require(points is >= -100m and <= 100m, $"A score of {points.ToString("0.####", CultureInfo.InvariantCulture)} is outside the forms' range: no form gives more than 100 points.", "Score");
        return new Score(decimal.ToInt64(Math.Round(points * Million, 0, MidpointRounding.AwayFromZero)));
    }

    public static bool operator <(Score left, Score right) => left.Millionths < right.Millionths;

    public static bool operator <=(Score left, Score right) => left.Millionths <= right.Millionths;

    public static bool operator >(Score left, Score right) => left.Millionths > right.Millionths;

    public static bool operator >=(Score left, Score right) => left.Millionths >= right.Millionths;

    public int CompareTo(Score other) => Millionths.CompareTo(other.Millionths);

    /// <summary>Invariant form at full precision: <c>"86.25"</c>, <c>"79.916667"</c>.</summary>
    public override string ToString() => Points.ToString("0.00####", CultureInfo.InvariantCulture);

    public static Score Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var score) ? score : throw new FormatException($"'{s}' is not a score.");

    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Score result)
    {
        result = default;
        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint
            | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;
        if (!decimal.TryParse(s, style, CultureInfo.InvariantCulture, out var points) || points is < -100m or > 100m)
        {
            return false;
        }

        result = Of(points);
        return true;
    }
}
