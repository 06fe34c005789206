using System.Globalization;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// A reading of a roast colour meter, exact to the tenth (58.5 is 585): the lower, the darker. It means nothing without
/// its scale and without whether whole beans or ground coffee were measured; scales do not convert by one factor. The
/// <c>default</c> is 0, a reading that no meter gives.
/// </summary>
public readonly record struct ColourReading(int Tenths) : IComparable<ColourReading>
{
    public decimal Value => Tenths / 10m;

    /// <summary>Rounded half away from zero to the tenth.</summary>
    /// <exception cref="RuleBrokenException">The reading lies outside 1 to 200.</exception>
    public static ColourReading Of(decimal value)
    {
        Rule.Require(value is >= 1m and <= 200m, "A colour reading lies between 1 and 200; leave it empty if it was not measured.", "Colour");
        return new ColourReading(decimal.ToInt32(Math.Round(value * 10m, 0, MidpointRounding.AwayFromZero)));
    }

    public static bool operator <(ColourReading left, ColourReading right) => left.Tenths < right.Tenths;

    public static bool operator <=(ColourReading left, ColourReading right) => left.Tenths <= right.Tenths;

    public static bool operator >(ColourReading left, ColourReading right) => left.Tenths > right.Tenths;

    public static bool operator >=(ColourReading left, ColourReading right) => left.Tenths >= right.Tenths;

    public int CompareTo(ColourReading other) => Tenths.CompareTo(other.Tenths);

    public override string ToString() => Value.ToString("0.0", CultureInfo.InvariantCulture);
}
