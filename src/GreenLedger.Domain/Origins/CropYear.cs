using System.Globalization;
using System.Text.RegularExpressions;

namespace GreenLedger.Domain.Origins;

/// <summary>
/// The label of a crop: <c>2026/27</c> for a harvest that runs over New Year, <c>2026</c> for one within a year
/// (handbook, trade 5.2). Labels sort in order of time.
/// </summary>
public static partial class CropYear
{
    public static string Of(int year) => year.ToString(CultureInfo.InvariantCulture);

    public static string Of(int from, int to) =>
        $"{from.ToString(CultureInfo.InvariantCulture)}/{(to % 100).ToString("00", CultureInfo.InvariantCulture)}";

    /// <summary>
    /// Reads <c>2026/27</c>, <c>2026-2027</c>, <c>26/27</c>, <c>2026</c>, with words around it such as "Crop" or
    /// "safra". Null when the text names no year from 1990 to 2099.
    /// </summary>
    public static string? Read(string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return null;
        }

        var two = TwoYears().Match(text);
        if (two.Success)
        {
            var from = Full(two.Groups[1].Value);
            var to = Full(two.Groups[2].Value);
            return to == from + 1 && IsYear(from) ? Of(from, to) : null;
        }

        var one = OneYear().Match(text);
        return one.Success ? Of(Full(one.Value)) : null;
    }

    private static int Full(string digits)
    {
        var year = int.Parse(digits, CultureInfo.InvariantCulture);
        return year < 100 ? 2000 + year : year;
    }

    private static bool IsYear(int year) => year is >= 1990 and <= 2099;

    [GeneratedRegex(@"(?<!\d)((?:19|20)?\d{2})\s*[/\-–]\s*((?:19|20)?\d{2})(?!\d)")]
    private static partial Regex TwoYears();

    [GeneratedRegex(@"(?<!\d)(?:199\d|20\d{2})(?!\d)")]
    private static partial Regex OneYear();
}
