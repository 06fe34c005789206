using GreenLedger.Documents.Layout;

namespace GreenLedger.Documents.Choosing;

/// <summary>
/// A shortlist as a workbook that goes on computing: what a figure rests on stands in cells of its own, and landed
/// cost, cost per point and weighted score are formulas over them. Four sheets: the ranking, the legs of each landed
/// cost, the rules with the rates and quotes of the day, and the lots that are not ranked. Every formula carries its
/// value, so that a reader without a calculator sees figures too.
/// </summary>
public static class ShortlistWorkbook
{
    /// <summary>A sheet that people read and recompute holds no more lots; the first by rank stand in it, and the sheet says so.</summary>
    public const int MostLots = 2_000;

    /// <summary>Landed costs are shown leg by leg for so many ranked lots; those below have theirs as a figure.</summary>
    public const int MostWithLegs = 200;

    internal const string RankedName = "Shortlist";
    internal const string LegsName = "Landed cost";
    internal const string RulesName = "Rules";
    internal const string NotRankedName = "Not ranked";

    public static void Write(ShortlistReport report, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(report);
        using var book = new FormulaBook($"Shortlist by {report.Rules}", report.MadeBy, report.House);
        var ranked = report.Shortlist.Ranked.Take(MostLots).ToList();
        var (first, legs, rules, others) = (book.Add(RankedName), book.Add(LegsName), book.Add(RulesName), book.Add(NotRankedName));
        var rows = LegRow.Of(report, ranked.Take(MostWithLegs));
        LegsSheet.Write(book, legs, rows, report.Shortlist.Currency);
        var cells = RulesSheet.Write(book, rules, report, ranked.Count);
        RankedSheet.Write(book, first, report, ranked, rows.Count, cells);
        NotRankedSheet.Write(book, others, report.Shortlist);
        book.Save(stream);
    }
}
