using System.Globalization;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>Gathers what is wrong with one row, in sentences that say what to do.</summary>
internal sealed class RowProblems(OfferLine line, SheetColumns columns)
{
    private readonly List<Problem> _all = [];

    public bool Any => _all.Count > 0;

    /// <summary>Each fault at its own column.</summary>
    public IReadOnlyList<Problem> All => _all;

    /// <summary>All sentences as one problem, at the first column that one of them names.</summary>
    public Problem ToProblem() => new(
        line.RowNumber, _all.Select(problem => problem.Column).FirstOrDefault(column => column is not null), string.Join(' ', _all.Select(problem => problem.Message)));

    public void Add(ColumnMeaning? meaning, string message) =>
        _all.Add(new Problem(line.RowNumber, meaning is { } about ? columns.Heading(about) : null, message));

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
