namespace GreenLedger.Domain.Offers.Reading;

/// <summary>A row of a table that is not taken, with its texts and what to do about it.</summary>
public sealed record RowSetAside(int Row, IReadOnlyList<string> Values, Problem Problem);

/// <summary>A table that the house kept, without judgement: which column holds what, by its headings, and the rows below them.</summary>
public sealed class HeadedTable<TColumn>
    where TColumn : struct, Enum
{
    private const int DeepestHeading = 40;

    private readonly Dictionary<TColumn, int> _columns;

    private HeadedTable(IReadOnlyList<OfferLine> lines, int heading, Dictionary<TColumn, int> columns)
    {
        _columns = columns;
        Headings = [.. lines[heading].Cells.Select(cell => cell.Trimmed)];
        Rows = [.. lines.Skip(heading + 1).Where(line => !line.IsBlank && line.Sheet == lines[heading].Sheet)];
    }

    public IReadOnlyList<string> Headings { get; }

    public IReadOnlyList<OfferLine> Rows { get; }

    /// <summary>By the line among the first that names most columns; null where none names enough.</summary>
    /// <param name="lines">As the file has them.</param>
    /// <param name="meaning">What a heading means; null where it means nothing.</param>
    /// <param name="isEnough">Whether these columns make a table of the kind.</param>
    public static HeadedTable<TColumn>? Find(IReadOnlyList<OfferLine> lines, Func<string, TColumn?> meaning, Func<IReadOnlyCollection<TColumn>, bool> isEnough)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return Enumerable.Range(0, Math.Min(lines.Count, DeepestHeading))
            .Select(at => (At: at, Columns: Columns(lines[at], meaning)))
            .Where(line => isEnough(line.Columns.Keys))
            .OrderByDescending(line => line.Columns.Count).ThenBy(line => line.At)
            .Select(line => new HeadedTable<TColumn>(lines, line.At, line.Columns)).FirstOrDefault();
    }

    public string? HeadingOf(TColumn column) => _columns.TryGetValue(column, out var at) ? Headings[at] : null;

    public Cell CellOf(OfferLine line, TColumn column)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line[_columns.GetValueOrDefault(column, -1)];
    }

    /// <summary>Null where the cell is empty.</summary>
    public string? Text(OfferLine line, TColumn column) => CellOf(line, column) is { IsEmpty: false } cell ? cell.Trimmed : null;

    /// <exception cref="RuleBrokenException">The cell holds something else.</exception>
    public DateOnly? Day(OfferLine line, TColumn column)
    {
        var cell = CellOf(line, column);
        var day = cell.Date ?? (cell.IsEmpty ? null : DateText.Day(cell.Trimmed));
        Rule.Require(cell.IsEmpty || day is not null, $"'{cell.Trimmed}' is not a day: write it as 2026-11-25.", column.ToString());
        return day;
    }

    /// <summary>A row with the texts of several: what it leaves empty is taken from the first other that says it.</summary>
    public static OfferLine Joined(IReadOnlyList<OfferLine> lines) => new(
        lines[0].RowNumber,
        [.. Enumerable.Range(0, lines.Max(line => line.Cells.Count)).Select(at => lines.Select(line => line[at]).FirstOrDefault(cell => !cell.IsEmpty, Cell.Empty))]);

    public RowSetAside Aside(OfferLine line, RuleBrokenException broken)
    {
        ArgumentNullException.ThrowIfNull(broken);
        return Aside(line, Enum.TryParse<TColumn>(broken.Field, out var column) ? HeadingOf(column) ?? broken.Field : null, broken.Message);
    }

    public RowSetAside Aside(OfferLine line, string? column, string sentence)
    {
        ArgumentNullException.ThrowIfNull(line);
        return new RowSetAside(line.RowNumber, [.. line.Cells.Select(cell => cell.Trimmed)], new Problem(line.RowNumber, column, sentence));
    }

    /// <exception cref="RuleBrokenException">The cell holds something else.</exception>
    internal decimal? Number(OfferLine line, TColumn column, NumberRange range)
    {
        var cell = CellOf(line, column);
        var number = cell.IsEmpty ? null : NumberText.Read(cell, range);
        Rule.Require(cell.IsEmpty || number is not null, $"'{cell.Trimmed}' is not a number.", column.ToString());
        return number;
    }

    private static Dictionary<TColumn, int> Columns(OfferLine line, Func<string, TColumn?> meaning)
    {
        var found = new Dictionary<TColumn, int>();
        for (var at = 0; at < line.Cells.Count; at++)
        {
            if (line[at].Number is null && meaning(line[at].Trimmed) is { } column)
            {
                found.TryAdd(column, at);
            }
        }

        return found;
    }
}
