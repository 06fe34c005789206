using System.Globalization;
using System.Text.RegularExpressions;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// Reads figures as people type them in lists: decimal point or comma, thousands marks (point, comma, space,
/// apostrophe), a sign, a currency or unit beside them. Text that is no single figure is null.
/// </summary>
internal static partial class NumberText
{
    public static decimal? Read(Cell cell, NumberRange range) => cell.Number ?? Read(cell.Text, range);

    public static decimal? Read(string? text, NumberRange range)
    {
        Span<char> digits = stackalloc char[40];
        var length = 0;
        var negative = false;
        var ended = false;
        foreach (var sign in text.AsSpan().Trim())
        {
            if (char.IsAsciiDigit(sign) || (sign is '.' or ',' && length > 0))
            {
                if (ended || length == digits.Length)
                {
                    return null;
                }

                digits[length++] = sign;
            }
            else if (sign is '-' or '−' or '–' && length == 0 && !negative)
            {
                negative = true;
            }
            else if (!IsGrouping(sign))
            {
                ended = length > 0;
                if (!IsUnit(sign, ended))
                {
                    return null;
                }
            }
        }

        return length == 0 ? null : Value(digits[..length].TrimEnd(".,"), range) is { } value ? (negative ? -value : value) : null;
    }

    /// <summary>Two figures such as "1900-2050 masl", the lower first; a single figure is both ends. Null for other text.</summary>
    public static (decimal From, decimal To)? ReadRange(Cell cell, NumberRange range)
    {
        if (Read(cell, range) is { } single)
        {
            return (single, single);
        }

        var figures = Figure().Matches(cell.Text).Select(match => Read(match.Value.TrimEnd('.', ','), range)).ToList();
        return figures is [{ } from, { } to] && from <= to ? (from, to) : null;
    }

    private static bool IsGrouping(char sign) => sign is ' ' or '\u00a0' or '\u202f' or '\u2009' or '\'' or '’';

    /// <summary>Currency signs may stand before a figure, letters and unit signs after it.</summary>
    private static bool IsUnit(char sign, bool after) =>
        char.IsLetter(sign) || sign is '%' or '+' || char.GetUnicodeCategory(sign) == UnicodeCategory.CurrencySymbol || (after && sign is '/');

    private static decimal? Value(ReadOnlySpan<char> digits, NumberRange range)
    {
        var point = digits.LastIndexOf('.');
        var comma = digits.LastIndexOf(',');
        if (point >= 0 && comma >= 0)
        {
            return Parse(digits, decimalMark: point > comma ? '.' : ',');
        }

        var mark = Math.Max(point, comma);
        if (mark < 0)
        {
            return Parse(digits, '\0');
        }

        var sign = digits[mark];
        if (digits.IndexOf(sign) != mark)
        {
            return IsGrouped(digits, sign) ? Parse(digits, '\0') : null;
        }

        return digits.Length - mark - 1 == 3 && mark is >= 1 and <= 3 && digits[0] != '0'
            ? Either(Parse(digits, sign), Parse(digits, '\0'), range)
            : Parse(digits, sign);
    }

    private static decimal? Either(decimal? withDecimals, decimal? grouped, NumberRange range) =>
        (withDecimals is { } small && range.Holds(small), grouped is { } large && range.Holds(large)) switch
        {
            (true, false) => withDecimals,
            (false, true) => grouped,
            _ => range.PrefersThousands ? grouped : withDecimals,
        };

    private static bool IsGrouped(ReadOnlySpan<char> digits, char sign)
    {
        var first = digits.IndexOf(sign);
        for (var at = first; at < digits.Length; at += 4)
        {
            if (digits[at] != sign || at + 3 >= digits.Length || (at + 4 < digits.Length && digits[at + 4] != sign))
            {
                return false;
            }
        }

        return first is >= 1 and <= 3;
    }

    private static decimal? Parse(ReadOnlySpan<char> digits, char decimalMark)
    {
        Span<char> plain = stackalloc char[digits.Length];
        var length = 0;
        foreach (var sign in digits)
        {
            if (char.IsAsciiDigit(sign))
            {
                plain[length++] = sign;
            }
            else if (sign == decimalMark)
            {
                plain[length++] = '.';
            }
        }

        return decimal.TryParse(plain[..length], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : null;
    }

    [GeneratedRegex(@"\d[\d.,'’]*")]
    private static partial Regex Figure();
}
