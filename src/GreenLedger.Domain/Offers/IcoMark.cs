using System.Text.RegularExpressions;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// The identification mark of the International Coffee Organization: country (3 digits), exporter (4) and running number
/// of the coffee year (4), <c>003-0037-1204</c>. Marks on lists are often irregular: the text is kept, and this reads it
/// where it can (handbook, trade 5.1).
/// </summary>
public static partial class IcoMark
{
    /// <summary>The mark padded to 3-4-4 digits, or null when the text has another form.</summary>
    public static string? Normalise(string? text)
    {
        var match = Form().Match(text ?? "");
        return match.Success
            ? $"{match.Groups[1].Value.PadLeft(3, '0')}-{match.Groups[2].Value.PadLeft(4, '0')}-{match.Groups[3].Value.PadLeft(4, '0')}"
            : null;
    }

    [GeneratedRegex(@"^\s*0*(\d{1,3})\s*[-/]\s*(\d{1,4})\s*[-/]\s*(\d{1,4})\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Form();
}
