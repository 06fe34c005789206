namespace GreenLedger.Documents.Layout;

/// <summary>Makes text fit for a cell: only characters that XML 1.0 allows, at most as long as a cell may be.</summary>
internal static class CellText
{
    private const int LongestCell = 32_767;

    public static string Clean(string text)
    {
        var shortened = text.Length > LongestCell ? text[..(LongestCell - 1)] + "…" : text;
        return shortened.Any(IsRefused) ? string.Concat(shortened.Where(character => !IsRefused(character))) : shortened;
    }

    /// <summary>A sheet's name: at most 31 characters, without those that a workbook refuses.</summary>
    public static string SheetName(string title)
    {
        var name = string.Concat(Clean(title).Select(character => "[]:*?/\\'".Contains(character, StringComparison.Ordinal) ? ' ' : character)).Trim();
        return name.Length == 0 ? "List" : name[..Math.Min(31, name.Length)].TrimEnd();
    }

    private static bool IsRefused(char character) =>
        (character < ' ' && character is not ('\t' or '\n' or '\r')) || character is '\uFFFE' or '\uFFFF';
}
