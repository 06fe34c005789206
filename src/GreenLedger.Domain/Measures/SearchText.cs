using System.Globalization;
using System.Text;

namespace GreenLedger.Domain.Measures;

/// <summary>
/// Text as it is searched and compared: lower case, without diacritics, every run of other signs than letters and
/// digits made one space. "Sítio Olho d'Água" is found by "olho d agua", and "Ofèrta" equals "oferta".
/// </summary>
public static class SearchText
{
    private const int Usual = 512;

    public static string Of(params ReadOnlySpan<string?> parts)
    {
        var most = 0;
        foreach (var part in parts)
        {
            most += 1 + (part?.Length ?? 0);
        }

        // Long text is folded on the heap; decomposed signs and "ß" need more room than they had.
        var room = most * 4;
        Span<char> text = room <= Usual ? stackalloc char[Usual] : new char[room];
        var length = 0;
        foreach (var part in parts)
        {
            length = Fold(part, text, length);
        }

        return new string(text[..length]);
    }

    private static int Fold(string? part, Span<char> text, int length)
    {
        if (string.IsNullOrEmpty(part))
        {
            return length;
        }

        length = Space(text, length);
        foreach (var sign in Ascii.IsValid(part) ? part : part.Normalize(NormalizationForm.FormD))
        {
            if (char.IsLetterOrDigit(sign))
            {
                length = Put(char.ToLowerInvariant(sign), text, length);
            }
            else if (!IsMark(sign))
            {
                length = Space(text, length);
            }
        }

        return length > 0 && text[length - 1] == ' ' ? length - 1 : length;
    }

    /// <summary>A space between words, never two and none at the start.</summary>
    private static int Space(Span<char> text, int length)
    {
        if (length > 0 && text[length - 1] != ' ')
        {
            text[length++] = ' ';
        }

        return length;
    }

    private static bool IsMark(char sign) => sign > 127 && CharUnicodeInfo.GetUnicodeCategory(sign) == UnicodeCategory.NonSpacingMark;

    private static int Put(char sign, Span<char> text, int length)
    {
        text[length++] = sign switch
        {
            'ß' => 's',
            'æ' => 'a',
            'ø' => 'o',
            'œ' => 'o',
            'ł' => 'l',
            'ı' => 'i',
            'đ' => 'd',
            _ => sign,
        };
        if (sign is 'ß' or 'æ' or 'œ')
        {
            text[length++] = sign == 'ß' ? 's' : 'e';
        }

        return length;
    }
}
