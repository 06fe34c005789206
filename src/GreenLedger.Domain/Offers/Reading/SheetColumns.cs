namespace GreenLedger.Domain.Offers.Reading;

/// <summary>Where each meaning stands on one sheet, found by the sheet's own headings.</summary>
internal sealed class SheetColumns
{
    private readonly (int Index, MappedColumn Column)[][] _byMeaning;
    private readonly int[] _inOrder;

    public SheetColumns(IReadOnlyList<string> headings, OfferMapping mapping)
    {
        Headings = headings;
        var positions = headings.Select((heading, index) => (Folded: Measures.SearchText.Of(heading), index)).DistinctBy(pair => pair.Folded).ToDictionary(pair => pair.Folded, pair => pair.index);
        _inOrder = [.. mapping.Columns.Select(column => positions.GetValueOrDefault(Measures.SearchText.Of(column.Heading), -1))];
        var byHeading = mapping.Columns.GroupBy(column => Measures.SearchText.Of(column.Heading)).ToDictionary(group => group.Key, group => group.First());
        var found = headings.Select((heading, index) => (index, Column: byHeading.GetValueOrDefault(Measures.SearchText.Of(heading))))
            .Where(pair => pair.Column is not null).Select(pair => (pair.index, pair.Column!)).ToList();
        _byMeaning = [.. Enum.GetValues<ColumnMeaning>().Select(meaning => found.Where(pair => pair.Item2.Meaning == meaning).ToArray())];
    }

    public IReadOnlyList<string> Headings { get; }

    public bool Has(ColumnMeaning meaning) => _byMeaning[(int)meaning].Length > 0;

    /// <summary>The heading of a meaning's column, by which a problem says where it is.</summary>
    public string? Heading(ColumnMeaning meaning) => Column(meaning)?.Heading;

    public MappedColumn? Column(ColumnMeaning meaning) => _byMeaning[(int)meaning] is [var first, ..] ? first.Column : null;

    public Cell Cell(OfferLine line, ColumnMeaning meaning) => _byMeaning[(int)meaning] is [var first, ..] ? line[first.Index] : Offers.Cell.Empty;

    /// <summary>The trimmed text of a meaning, several columns joined by a comma; null when empty.</summary>
    public string? Text(OfferLine line, ColumnMeaning meaning)
    {
        var columns = _byMeaning[(int)meaning];
        if (columns.Length == 0)
        {
            return null;
        }

        if (columns.Length == 1)
        {
            var text = line[columns[0].Index].Trimmed;
            return IsNothing(text) ? null : text;
        }

        var texts = columns.Select(column => line[column.Index].Trimmed).Where(text => !IsNothing(text)).Distinct().ToList();
        return texts.Count == 0 ? null : string.Join(", ", texts);
    }

    /// <summary>The line with its cells in the order of the mapping's columns, however this sheet orders them.</summary>
    public OfferLine InOrder(OfferLine line) => line with { Cells = [.. _inOrder.Select(index => line[index])] };

    /// <summary>How many of the mapped columns hold something.</summary>
    public int Filled(OfferLine line) =>
        _byMeaning.Skip(1).Sum(columns => columns.Count(column => !line[column.Index].IsEmpty));

    public int Mapped => _byMeaning.Skip(1).Sum(columns => columns.Length);

    private static bool IsNothing(string text) => text.Length <= 3 && !text.AsSpan().ContainsAnyExcept("-–—./");
}
