using System.Globalization;
using System.Text;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// Text as it is searched and compared: lower case, without diacritics, every run of other signs than letters and
/// digits made one space. "Sítio Olho d'Água" is found by "olho d agua", and "Ofèrta" equals "oferta".
/// </summary>
public static class SearchText
{
    private static readonly string[] Ascii127 = [.. Enumerable.Range(0, 128).Select(code => ((char)code).ToString())];

    public static string Of(params ReadOnlySpan<string?> parts)
    {
        var text = new StringBuilder();
        foreach (var part in parts)
        {
            Fold(part, text);
        }

        return text.ToString();
    }

    private static void Fold(string? part, StringBuilder text)
    {
        if (string.IsNullOrEmpty(part))
        {
            return;
        }

        if (text.Length > 0)
        {
            text.Append(' ');
        }

        foreach (var sign in Ascii.IsValid(part) ? part : part.Normalize(NormalizationForm.FormD))
        {
            if (char.IsLetterOrDigit(sign))
            {
                text.Append(Plain(char.ToLowerInvariant(sign)));
            }
            else if (!IsMark(sign) && text.Length > 0 && text[^1] != ' ')
            {
                text.Append(' ');
            }
        }

        while (text.Length > 0 && text[^1] == ' ')
        {
            text.Length--;
        }
    }

    private static bool IsMark(char sign) => sign > 127 && CharUnicodeInfo.GetUnicodeCategory(sign) == UnicodeCategory.NonSpacingMark;

    private static string Plain(char sign) => sign switch
    {
        'ß' => "ss",
        'æ' => "ae",
        'ø' => "o",
        'œ' => "oe",
        'ł' => "l",
        'ı' => "i",
        'đ' => "d",
        _ => sign < 128 ? Ascii127[sign] : sign.ToString(),
    };

}
