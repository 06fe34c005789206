namespace GreenLedger.Domain.Offers.Reading;

/// <summary>One sheet of a list: its table's place, and its rows from below the headings on, read as they come.</summary>
internal sealed record ListSheet(string? Name, ListTable Table, IEnumerable<OfferLine> Rows);

/// <summary>Parts a list into its sheets without holding more of it than the lines in which a table may begin.</summary>
internal static class ListSheets
{
    /// <summary>
    /// The sheets that have a table, in order. The rows of one must be read before the next sheet is asked for, since the
    /// lines are passed over once.
    /// </summary>
    public static IEnumerable<ListSheet> Of(IEnumerable<OfferLine> lines)
    {
        using var source = lines.GetEnumerator();
        var more = source.MoveNext();
        while (more)
        {
            var sheet = source.Current.Sheet;
            var head = new List<OfferLine>();
            while (more && source.Current.Sheet == sheet && head.Count < ListTable.Deepest)
            {
                head.Add(source.Current);
                more = source.MoveNext();
            }

            IEnumerable<OfferLine> Rest()
            {
                while (more && source.Current.Sheet == sheet)
                {
                    yield return source.Current;
                    more = source.MoveNext();
                }
            }

            if (ListTable.Find(head) is { } table)
            {
                yield return new ListSheet(sheet, table, head.Skip(table.LinesAbove).Concat(Rest()));
            }

            foreach (var _ in Rest())
            {
                // Whatever the reader of this sheet left is passed over, so that the next sheet is reached.
            }
        }
    }
}
