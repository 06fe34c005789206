using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// A net weight, exact to the microgram, so that kilograms and pounds are both exact
/// (1 lb = 0.45359237 kg, international yard and pound agreement of 1959). The <c>default</c> is zero.
/// </summary>
public readonly record struct Weight(long Micrograms) : IComparable<Weight>, IParsable<Weight>
{
    public const long MicrogramsPerKilogram = 1_000_000_000;
    public const long MicrogramsPerPound = 453_592_370;

    public static Weight Zero => default;

    public decimal Kilograms => (decimal)Micrograms / MicrogramsPerKilogram;

    public decimal Pounds => (decimal)Micrograms / MicrogramsPerPound;

    public decimal Grams => Micrograms / 1_000_000m;

    /// <summary>Rounded half up to the microgram.</summary>
    public static Weight FromKilograms(decimal kilograms) => FromAmount(kilograms, MicrogramsPerKilogram);

    /// <summary>Rounded half up to the microgram; whole pounds and their hundredths are exact.</summary>
    public static Weight FromPounds(decimal pounds) => FromAmount(pounds, MicrogramsPerPound);

    public static Weight FromGrams(decimal grams) => FromAmount(grams, 1_000_000m);

    public static Weight operator +(Weight left, Weight right) => new(checked(left.Micrograms + right.Micrograms));

    public static Weight operator -(Weight left, Weight right) => new(checked(left.Micrograms - right.Micrograms));

    public static Weight operator *(Weight weight, int count) => new(checked(weight.Micrograms * count));

    public static bool operator <(Weight left, Weight right) => left.Micrograms < right.Micrograms;

    public static bool operator <=(Weight left, Weight right) => left.Micrograms <= right.Micrograms;

    public static bool operator >(Weight left, Weight right) => left.Micrograms > right.Micrograms;

    public static bool operator >=(Weight left, Weight right) => left.Micrograms >= right.Micrograms;

    public int CompareTo(Weight other) => Micrograms.CompareTo(other.Micrograms);

    /// <summary>Kilograms in invariant form with the unit: <c>"2660 kg"</c>.</summary>
    public override string ToString() => Kilograms.ToString("0.#########", CultureInfo.InvariantCulture) + " kg";

    /// <summary>Reads <c>"2660"</c>, <c>"2660 kg"</c> or <c>"100 lb"</c> in invariant form.</summary>
    public static Weight Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var weight) ? weight : throw new FormatException($"'{s}' is not a weight.");

    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Weight result)
    {
        result = default;
        var text = s?.Trim() ?? "";
        var pounds = text.EndsWith("lb", StringComparison.OrdinalIgnoreCase);
        if (pounds || text.EndsWith("kg", StringComparison.OrdinalIgnoreCase))
        {
            text = text[..^2].TrimEnd();
        }

        const NumberStyles style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        if (!decimal.TryParse(text, style, CultureInfo.InvariantCulture, out var amount)
            || Math.Abs(amount) > 9_000_000_000m)
        {
            return false;
        }

        result = pounds ? FromPounds(amount) : FromKilograms(amount);
        return true;
    }

    /// <exception cref="RuleBrokenException">More than about nine million tonnes.</exception>
    private static Weight FromAmount(decimal amount, decimal micrograms)
    {
        Rule.Require(Math.Abs(amount) < long.MaxValue / micrograms, "This weight is beyond any that a ledger holds: correct it.");
        return new(decimal.ToInt64(Math.Round(amount * micrograms, 0, MidpointRounding.AwayFromZero)));
    }
}
