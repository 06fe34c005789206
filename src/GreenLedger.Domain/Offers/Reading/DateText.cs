using System.Globalization;
using System.Text.RegularExpressions;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers.Reading.Words;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// Reads days and months as lists write them in five languages: "15 December 2026", "15.12.2026", "2026-12-15",
/// "15 de diciembre de 2026", "ene 2027". Of 05/06/2026 the day comes first, as outside the United States.
/// </summary>
internal static partial class DateText
{
    /// <summary>The first full day that stands in the text.</summary>
    public static DateOnly? Day(string text)
    {
        var numeric = Numeric().Match(text);
        var worded = Worded(text);
        return numeric.Success && Day(numeric) is { } day ? day : worded;
    }

    /// <summary>The first month with a year that stands in the text: "março 2027", "Jan-27", "01/2027".</summary>
    public static (int Year, int Month)? Month(string text)
    {
        var words = Words(text);
        for (var at = 0; at + 1 < words.Length; at++)
        {
            if (TradeWords.Month(words[at]) is { } month && Year(words[words[at + 1] == "de" && at + 2 < words.Length ? at + 2 : at + 1]) is { } year)
            {
                return (year, month);
            }
        }

        var numeric = MonthAndYear().Match(text);
        return numeric.Success && Number(numeric.Groups[1]) is >= 1 and <= 12 ? (Number(numeric.Groups[2]), Number(numeric.Groups[1])) : null;
    }

    private static DateOnly? Day(Match numeric)
    {
        return numeric.Groups["y1"].Success
            ? Valid(Number(numeric.Groups["y1"]), Number(numeric.Groups["m1"]), Number(numeric.Groups["d1"]))
            : Valid(Full(Number(numeric.Groups["y2"])), Number(numeric.Groups["m2"]), Number(numeric.Groups["d2"]))
                ?? Valid(Full(Number(numeric.Groups["y2"])), Number(numeric.Groups["d2"]), Number(numeric.Groups["m2"]));
    }

    private static DateOnly? Worded(string text)
    {
        var words = Words(text).Where(word => word is not ("de" or "of" or "the" or "den")).Select(Bare).ToArray();
        for (var at = 0; at + 2 < words.Length; at++)
        {
            var dayFirst = TradeWords.Month(words[at + 1]) is { } month && Year(words[at + 2]) is { } year && int.TryParse(words[at], out var day)
                ? Valid(year, month, day) : null;
            var monthFirst = TradeWords.Month(words[at]) is { } first && Year(words[at + 2]) is { } then && int.TryParse(words[at + 1], out var second)
                ? Valid(then, first, second) : null;
            if ((dayFirst ?? monthFirst) is { } found)
            {
                return found;
            }
        }

        return null;
    }

    private static string[] Words(string text) => SearchText.Of(text).Split(' ', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>"15th" and "1er" are days too.</summary>
    private static string Bare(string word) => char.IsAsciiDigit(word[0]) ? word.TrimEnd('t', 'h', 's', 'n', 'd', 'r', 'e') : word;

    private static int? Year(string word) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var year) && word.Length is 2 or 4 && Full(year) is >= 1990 and <= 2099
            ? Full(year) : null;

    private static int Full(int year) => year < 100 ? 2000 + year : year;

    private static int Number(Group group) => int.Parse(group.ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture);

    private static DateOnly? Valid(int year, int month, int day) =>
        year is >= 1990 and <= 2099 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month)
            ? new DateOnly(year, month, day) : null;

    [GeneratedRegex(@"(?<!\d)(?:(?<y1>(?:19|20)\d{2})[-./](?<m1>\d{1,2})[-./](?<d1>\d{1,2})|(?<d2>\d{1,2})[-./](?<m2>\d{1,2})[-./](?<y2>(?:19|20)?\d{2}))(?!\d)")]
    private static partial Regex Numeric();

    [GeneratedRegex(@"(?<![\d/.-])(\d{1,2})[/.-]((?:19|20)\d{2})(?!\d)")]
    private static partial Regex MonthAndYear();
}
