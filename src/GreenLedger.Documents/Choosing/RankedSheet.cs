using ClosedXML.Excel;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Documents.Choosing;

/// <summary>The ranking: measured figures as numbers, everything that follows from them as formulas.</summary>
internal sealed class RankedSheet
{
    private readonly ShortlistReport _report;
    private readonly RuleTerms _terms;
    private readonly RankedFormulas _formulas;
    private readonly ShortlistWords _words;

    private RankedSheet(ShortlistReport report, int legs, RulesCells rules)
    {
        (_report, _terms) = (report, report.Shortlist.Terms);
        _formulas = new RankedFormulas(rules, _terms.CostPerPoint, legs);
        _words = new ShortlistWords(report.Shortlist);
    }

    public static void Write(FormulaBook book, IXLWorksheet sheet, ShortlistReport report, IReadOnlyList<ShortlistEntry> ranked, int legs, RulesCells rules)
    {
        var page = new RankedSheet(report, legs, rules);
        book.Table(sheet, [.. Facts(), .. page.Reckoned(), .. page.Judged()], ranked, frozenColumns: (int)Place.Lot);
        if (ranked.Count > 0)
        {
            page.Totals(book, sheet, ranked);
        }
    }

    private static IEnumerable<SheetColumn<ShortlistEntry>> Facts() =>
    [
        new("Rank", 7, "0", (entry, _) => entry.Rank),
        new("Reference", 16, "", (entry, _) => entry.Candidate.Ref),
        new("Lot", 28, "", (entry, _) => entry.Candidate.Name),
        new("Supplier", 24, "", (entry, _) => entry.Candidate.Supplier),
        new("Origin", 8, "", (entry, _) => entry.Candidate.Origin),
        new("Process", 16, "", (entry, _) => entry.Candidate.Process),
        new("Score, points", 10, "0.00##", (entry, _) => entry.Score!.Value.Score.Points),
        new("Low, points (95 %)", 10, "0.00", (entry, _) => entry.Score!.Value.Low.Points),
        new("High, points (95 %)", 10, "0.00", (entry, _) => entry.Score!.Value.High.Points),
        new("Interval holds for", 14, "", (entry, _) => entry.Score is { Origin: ScoreOrigin.Cupped } score ? score.HoldsFor.Word() : null),
        new("Scored by", 10, "", (entry, _) => entry.Score!.Value.Origin == ScoreOrigin.Stated ? "the seller" : "our panel"),
        new("On offer, kg", 11, "#,##0", (entry, _) => entry.Candidate.Quantity.Kilograms),
    ];

    private IEnumerable<SheetColumn<ShortlistEntry>> Reckoned()
    {
        var currency = _report.Shortlist.Currency;
        return
        [
            new("Landed, kg", 11, "#,##0.0", (entry, _) => CostOf(entry)?.Landed.Kilograms),
            new($"Landed total, {currency}", 14, "#,##0.00", (entry, row) => HasLegs(entry) ? new SheetFormula(_formulas.Total(row), Total(entry)) : Total(entry)),
            new($"Landed cost, {currency}/kg", 12, "#,##0.0000", (entry, row) => CostOf(entry) is null ? Cost(entry) : new SheetFormula(RankedFormulas.Cost(row), Cost(entry))),
            new($"Cost per point, {currency}", 12, "#,##0.0000", (entry, row) => new SheetFormula(_formulas.CostPerPoint(row), entry.CostPerPoint)),
            new("Score counts", 10, "0.0000", (entry, row) => new SheetFormula(_formulas.ScoreCounts(row), ScoreCounts(entry))),
            new("Landed cost counts", 10, "0.0000", (entry, row) => new SheetFormula(_formulas.CostCounts(row), CostCounts(entry))),
            new("Cost per point counts", 10, "0.0000", (entry, row) => new SheetFormula(_formulas.PointCounts(row), PointCounts(entry))),
            new("Process counts", 10, "0.00", (entry, _) => Preference(entry)),
            new("Weighted score", 10, "0.0000", (entry, row) => new SheetFormula(_formulas.Weighted(row), entry.Terms.Total)),
        ];
    }

    private IEnumerable<SheetColumn<ShortlistEntry>> Judged() =>
    [
        new("On the front", 8, "", (entry, _) => entry.IsOnFront),
        new("Neighbours on the front", 26, "", (entry, _) => string.Join("; ", _words.NotSeparated(entry))),
        new("Chance of being best", 10, "0.0%", (entry, _) => entry.Chance?.Best),
        new("Chance of first three", 10, "0.0%", (entry, _) => entry.Chance?.FirstThree),
        new($"Predicted, {_report.Shortlist.Currency}/kg", 12, "#,##0.0000", (entry, _) => entry.PriceCheck?.PredictedPerKilogram),
        new("Cost to predicted", 11, "+0.0%;-0.0%;0.0%", (entry, row) => entry.PriceCheck?.Difference is { } difference ? new SheetFormula(RankedFormulas.Difference(row), difference) : null),
        new("Why", 110, "", (entry, _) => string.Join(" ", _words.Reasons(entry))),
    ];

    /// <summary>Of the rows that the filter shows; a row lies between, so that sorting leaves the totals alone.</summary>
    private void Totals(FormulaBook book, IXLWorksheet sheet, IReadOnlyList<ShortlistEntry> ranked)
    {
        var (last, row) = (ranked.Count + 1, ranked.Count + 3);
        var total = ranked.Sum(entry => Total(entry) ?? 0);
        var landed = ranked.Sum(entry => (double)(CostOf(entry)?.Landed.Kilograms ?? 0m));
        book.Put(sheet.Cell(row, (int)Place.Ref), "Total of the lots shown");
        book.Put(sheet.Cell(row, (int)Place.Quantity), new SheetFormula(RankedFormulas.Sum(Place.Quantity, last), ranked.Sum(entry => (double)entry.Candidate.Quantity.Kilograms)));
        book.Put(sheet.Cell(row, (int)Place.Landed), new SheetFormula(RankedFormulas.Sum(Place.Landed, last), landed));
        book.Put(sheet.Cell(row, (int)Place.Total), new SheetFormula(RankedFormulas.Sum(Place.Total, last), total));
        book.Put(sheet.Cell(row, (int)Place.Cost), new SheetFormula(RankedFormulas.MeanCost(row), landed > 0 ? total / landed : null));
        sheet.Row(row).Style.Font.Bold = true;
    }

    private LandedCost? CostOf(ShortlistEntry entry) =>
        _report.Costs.TryGetValue(entry.Candidate.OfferId, out var cost) && cost.IsKnown ? cost : null;

    private bool HasLegs(ShortlistEntry entry) => entry.Rank <= ShortlistWorkbook.MostWithLegs && CostOf(entry) is not null;

    private double? Total(ShortlistEntry entry) => (double?)CostOf(entry)?.Total?.Amount;

    private static double Cost(ShortlistEntry entry) => (double)entry.Candidate.CostPerKilogram!.Value;

    private double ScoreCounts(ShortlistEntry entry) =>
        (double)((entry.Score!.Value.Score.Points - _terms.Anchors.LowScore.Points) / (_terms.Anchors.HighScore.Points - _terms.Anchors.LowScore.Points));

    private double CostCounts(ShortlistEntry entry) =>
        (double)((_terms.Anchors.HighCost - entry.Candidate.CostPerKilogram!.Value) / (_terms.Anchors.HighCost - _terms.Anchors.LowCost));

    /// <summary>What the term gives, less its weight; 0 while it weighs nothing.</summary>
    private double PointCounts(ShortlistEntry entry) => _terms.Weights.CostPerPoint == 0m
        ? 0
        : entry.Terms.CostPerPoint * (double)(_terms.Weights.Sum / _terms.Weights.CostPerPoint);

    private decimal Preference(ShortlistEntry entry) =>
        _terms.Processes.FirstOrDefault(choice => choice.MethodId == entry.Candidate.ProcessMethodId)?.Preference ?? 0m;
}
