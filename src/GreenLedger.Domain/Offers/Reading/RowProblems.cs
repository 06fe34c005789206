using System.Globalization;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>Gathers what is wrong with one row, in sentences that say what to do.</summary>
internal sealed class RowProblems(OfferLine line, SheetColumns columns)
{
    private readonly List<string> _messages = [];
    private string? _column;

    public bool Any => _messages.Count > 0;

    /// <summary>All sentences as one problem, at the column of the first.</summary>
    public Problem ToProblem() => new(line.RowNumber, _column, string.Join(' ', _messages));

    public void Add(ColumnMeaning? meaning, string message)
    {
        _column ??= meaning is { } about ? columns.Heading(about) : null;
        _messages.Add(message);
    }

    /// <summary>The text when it fits into the ledger, else a problem.</summary>
    public string? Fits(string? text, ColumnMeaning meaning, int longest = 200)
    {
        if (text is null || text.Length <= longest)
        {
            return text;
        }

        Add(meaning, $"The {meaning.Word()} is longer than {longest} characters: shorten it.");
        return null;
    }

    public static string Figure(decimal number) => number.ToString("#,##0.####", CultureInfo.InvariantCulture);
}
