using ClosedXML.Excel;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;

namespace GreenLedger.Documents.Choosing;

/// <summary>Lots that fail a gate, with the gate named, and those that were scored on another form.</summary>
internal static class NotRankedSheet
{
    public static void Write(FormulaBook book, IXLWorksheet sheet, Shortlist shortlist)
    {
        var entries = shortlist.Failed.Concat(shortlist.OtherForm).Take(ShortlistWorkbook.MostLots).ToList();
        book.Table(sheet, Columns(shortlist), entries, frozenColumns: 1);
        if (LeftOut(shortlist) is > 0 and var more)
        {
            book.Put(sheet.Cell(entries.Count + 3, 1), $"And {Printed.Count(more, "lot", "lots")} more that are not ranked: the page shows them all.");
        }
    }

    /// <summary>How many lots that are not ranked find no place on the sheet.</summary>
    public static int LeftOut(Shortlist shortlist) =>
        Math.Max(0, shortlist.Failed.Count + shortlist.OtherForm.Count - ShortlistWorkbook.MostLots);

    private static SheetColumn<ShortlistEntry>[] Columns(Shortlist shortlist)
    {
        var words = new ShortlistWords(shortlist);
        return
        [
            new("Reference", 16, "", (entry, _) => entry.Candidate.Ref),
            new("Lot", 26, "", (entry, _) => entry.Candidate.Name),
            new("Supplier", 24, "", (entry, _) => entry.Candidate.Supplier),
            new("Origin", 8, "", (entry, _) => entry.Candidate.Origin),
            new("Process", 16, "", (entry, _) => entry.Candidate.Process),
            new("Stands", 20, "", (entry, _) => entry.Standing == Standing.OtherForm ? "on another form" : ShortlistWords.IsMissingOnly(entry) ? "facts are missing" : "fails a gate"),
            new("Gates failed", 26, "", (entry, _) => string.Join(", ", ShortlistWords.Names(entry.FailedGates))),
            new("Score, points", 10, "0.00##", (entry, _) => entry.Score?.Score.Points),
            new("Stated score, points", 10, "0.00", (entry, _) => entry.Candidate.StatedScore?.Points),
            new("On offer, kg", 12, "#,##0", (entry, _) => entry.Candidate.Quantity.Kilograms),
            new($"Landed cost, {shortlist.Currency}/kg", 12, "#,##0.0000", (entry, _) => entry.Candidate.CostPerKilogram),
            new("Why", 90, "", (entry, _) => string.Join(" ", words.Reasons(entry))) { Wraps = true },
        ];
    }
}
