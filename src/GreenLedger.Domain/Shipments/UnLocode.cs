using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;

namespace GreenLedger.Domain.Shipments;

/// <summary>
/// A place by UN/LOCODE (UNECE Recommendation 16, from memory): two letters of the country by ISO 3166-1 and three letters or
/// digits from 2 to 9. Only its shape is checked, since the list of places changes twice a year. The <c>default</c> is no place.
/// </summary>
public readonly partial record struct UnLocode : IParsable<UnLocode>
{
    private readonly string? _text;

    private UnLocode(string text) => _text = text;

    /// <summary>The country in which the place lies.</summary>
    public string Country => ToString()[..2];

    /// <summary>Five signs without a space: <c>DEHAM</c>.</summary>
    public override string ToString() => _text ?? throw new InvalidOperationException("This is no place.");

    /// <exception cref="RuleBrokenException">The text does not have the shape of a UN/LOCODE.</exception>
    public static UnLocode Of(string? text)
    {
        Rule.Require(TryParse(text, null, out var code), $"'{text?.Trim()}' is not a UN/LOCODE: write the country's two letters and three letters or digits from 2 to 9, such as DEHAM for Hamburg.", "Port");
        return code;
    }

    public static UnLocode Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var code) ? code : throw new FormatException($"'{s}' is not a UN/LOCODE.");

    /// <summary>Reads it with or without the space after the country.</summary>
    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out UnLocode result)
    {
        var text = (s ?? "").Trim().ToUpperInvariant();
        text = text.Length == 6 && text[2] == ' ' ? text.Remove(2, 1) : text;
        var fits = Shape().IsMatch(text);
        result = fits ? new UnLocode(text) : default;
        return fits;
    }

    // The codes that ISO 3166-1 leaves to its users are no country's.
    [GeneratedRegex("^(?!AA|Q[M-Z]|X|ZZ)[A-Z]{2}[A-Z2-9]{3}$")]
    private static partial Regex Shape();
}
