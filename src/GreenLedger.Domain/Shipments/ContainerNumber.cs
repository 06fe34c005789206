using System.Diagnostics.CodeAnalysis;
using System.Text.RegularExpressions;

namespace GreenLedger.Domain.Shipments;

/// <summary>
/// The number of a freight container by ISO 6346: three letters of the owner, the category (U, J or Z), six digits and a check
/// digit. A check digit that does not fit is kept and told, because papers can be wrong while the container is right.
/// The <c>default</c> is no number.
/// </summary>
public readonly partial record struct ContainerNumber : IParsable<ContainerNumber>
{
    private readonly string? _text;

    private ContainerNumber(string text) => _text = text;

    /// <summary>The digit that the other ten characters ask for (handbook, trade 5.3): Σ value × 2^position, mod 11, 10 becoming 0.</summary>
    public int ExpectedCheckDigit => ToString()[..10].Select((sign, position) => ValueOf(sign) << position).Sum() % 11 % 10;

    public bool HasRightCheckDigit => ToString()[10] - '0' == ExpectedCheckDigit;

    /// <summary>What to look at when the check digit does not fit; null when it does.</summary>
    public string? Doubt => HasRightCheckDigit
        ? null
        : $"{this}: by ISO 6346 the last digit should be {ExpectedCheckDigit}. Read the number again, on the container if you can.";

    /// <summary>Eleven signs without spaces: <c>CSQU3054383</c>.</summary>
    public override string ToString() => _text ?? throw new InvalidOperationException("This is no container number.");

    /// <exception cref="RuleBrokenException">The text does not have the shape of a container number.</exception>
    public static ContainerNumber Of(string? text)
    {
        Rule.Require(TryParse(text, null, out var number), $"'{text?.Trim()}' is not a container number: write four letters, the fourth U, J or Z, and seven digits, such as CSQU3054383.", "Container");
        return number;
    }

    public static ContainerNumber Parse(string s, IFormatProvider? provider) =>
        TryParse(s, provider, out var number) ? number : throw new FormatException($"'{s}' is not a container number.");

    /// <summary>Reads it with or without the spaces, hyphens and the frame around the check digit that doors and papers write.</summary>
    public static bool TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out ContainerNumber result)
    {
        var text = Between().Replace(s ?? "", "").ToUpperInvariant();
        var fits = Shape().IsMatch(text);
        result = fits ? new ContainerNumber(text) : default;
        return fits;
    }

    /// <summary>Digits are themselves; letters run from A = 10 and leave out the multiples of 11.</summary>
    private static int ValueOf(char sign)
    {
        if (char.IsAsciiDigit(sign))
        {
            return sign - '0';
        }

        var plain = sign - 'A' + 10;
        return plain + (plain - 1) / 10;
    }

    [GeneratedRegex(@"[\s\-/\[\]]")]
    private static partial Regex Between();

    [GeneratedRegex("^[A-Z]{3}[UJZ][0-9]{7}$")]
    private static partial Regex Shape();
}
