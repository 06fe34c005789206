using System.Globalization;
using ClosedXML.Excel;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Documents.Choosing;

/// <summary>Where the figures stand that the ranking's formulas read: addresses with the sheet's name.</summary>
internal sealed record RulesCells(
    string ScoreWeight, string CostWeight, string PointWeight, string ProcessWeight, string WeightSum,
    string LowScore, string HighScore, string LowCost, string HighCost, string LowPoint, string HighPoint,
    string BaseScore, string ReferenceScore, string ReferenceCost);

/// <summary>The sheet of the rules: who ranked what by which figures, and the rates and quotes of the day.</summary>
internal sealed class RulesSheet
{
    private readonly FormulaBook _book;
    private readonly IXLWorksheet _sheet;
    private int _row;

    private RulesSheet(FormulaBook book, IXLWorksheet sheet) => (_book, _sheet) = (book, sheet);

    public static RulesCells Write(FormulaBook book, IXLWorksheet sheet, ShortlistReport report, int ranked)
    {
        sheet.Column(1).Width = 40;
        sheet.Columns(2, 4).Width = 22;
        sheet.Column(5).Width = 60;
        var page = new RulesSheet(book, sheet);
        page.Origin(report);
        var cells = page.Figures(report, ranked);
        page.Gates(report.Shortlist);
        page.Processes(report.Shortlist.Terms);
        page.Rates(report);
        page.Quotes(report);
        page.Grounds(report, ranked);
        return cells;
    }

    private void Origin(ShortlistReport report)
    {
        Section($"Shortlist by {report.Rules}");
        Row("House", report.House);
        Row("Rules", report.Rules, note: $"revision {report.Revision}{(report.IsTrial ? ", with weights that were tried on the page" : "")}");
        Row("Offers of", report.On);
        Row("Offers narrowed to", report.Search ?? "all");
        Row("Taken out by", report.MadeBy, note: Printed.Moment(report.MadeAt, report.Zone));
        var words = new RuleWords(report.Shortlist.Terms, report.Form);
        Row("Cupping form", report.Form, note: "results on another form stand apart");
        Row("Several sessions of one lot", words.Sessions);
        Row("Lots with a seller's score only", words.Stated);
    }

    private RulesCells Figures(ShortlistReport report, int ranked)
    {
        var (terms, currency) = (report.Shortlist.Terms, report.Shortlist.Currency);
        Section("Weights", "Weight", "", "", "Change one, and the weighted scores follow; then sort by them.");
        var first = _row + 1;
        var (score, cost) = (Row("Score", terms.Weights.Score), Row("Landed cost", terms.Weights.Cost));
        var (point, process) = (Row("Cost per point", terms.Weights.CostPerPoint), Row("Process", terms.Weights.Process));
        var sum = Row("Sum of the weights", new SheetFormula(string.Create(CultureInfo.InvariantCulture, $"SUM(B{first}:B{_row})"), (double)terms.Weights.Sum));
        Section("What counts 0 and 1", "Figure", "Unit");
        var (lowScore, highScore) = (Row("Score that counts 0", terms.Anchors.LowScore.Points, "points"), Row("Score that counts 1", terms.Anchors.HighScore.Points, "points"));
        var (highCost, lowCost) = (Row("Landed cost that counts 0", terms.Anchors.HighCost, $"{currency}/kg"), Row("Landed cost that counts 1", terms.Anchors.LowCost, $"{currency}/kg"));
        var (highPoint, lowPoint) = (Row("Cost per point that counts 0", terms.Anchors.HighCostPerPoint, $"{currency} a point"), Row("Cost per point that counts 1", terms.Anchors.LowCostPerPoint, $"{currency} a point"));
        Section("Cost per point", "Figure", "Unit");
        Row("Definition", new RuleWords(terms, report.Form).CostPerPoint);
        var baseScore = Row("Base score", terms.BaseScore.Points, "points");
        var (cheapest, reference) = (report.Shortlist.Reference, Row("Rank of the cheapest lot", report.Shortlist.Reference?.Rank));
        var isHere = cheapest is not null && cheapest.Rank <= ranked;
        var (itsScore, itsCost) = ((double?)cheapest?.Score?.Score.Points, (double?)cheapest?.Candidate.CostPerKilogram);
        var referenceScore = Row("Its score", isHere ? new SheetFormula(RankedFormulas.OfRank(reference, Place.Score, ranked), itsScore) : itsScore, "points");
        var referenceCost = Row("Its landed cost", isHere ? new SheetFormula(RankedFormulas.OfRank(reference, Place.Cost, ranked), itsCost) : itsCost, $"{currency}/kg");
        return new RulesCells(
            score, cost, point, process, sum, lowScore, highScore, lowCost, highCost, lowPoint, highPoint, baseScore, referenceScore, referenceCost);
    }

    private void Gates(Shortlist shortlist)
    {
        Section("Gates", "Limit", "Unit", "Lots that miss it", "In words");
        foreach (var gate in new RuleWords(shortlist.Terms, null).Gates)
        {
            int? missed = gate.Gate == Gate.None ? null : shortlist.Failed.Count(entry => entry.FailedGates.HasFlag(gate.Gate));
            if (gate.Figures.Count == 0)
            {
                Row(gate.What, gate.Says, third: missed);
            }

            foreach (var (figure, at) in gate.Figures.Select((figure, at) => (figure, at)))
            {
                Row($"{gate.What}, {figure.Bound}", figure.Figure, figure.Unit, at == 0 ? missed : null, at == 0 ? gate.Says : "");
            }
        }

        Row("No score on the form", null, "", shortlist.Failed.Count(entry => entry.FailedGates.HasFlag(Gate.NoScore)));
        Row("No landed cost", null, "", shortlist.Failed.Count(entry => entry.FailedGates.HasFlag(Gate.NoCost)));
    }

    private void Processes(RuleTerms terms)
    {
        Section("Processes", "Preference, 0 to 1", "Allowed");
        foreach (var choice in terms.Processes)
        {
            Row(choice.Name, choice.Preference, choice.IsAllowed ? "yes" : "no");
        }

        Row("Any other", 0m, terms.OtherProcessesAllowed ? "yes" : "no");
    }

    private void Rates(ShortlistReport report)
    {
        Section("Exchange rates", "Units per EUR", "Currency", "Of", "Source");
        var rates = report.Costs.Values.Where(cost => cost.IsKnown).SelectMany(cost => cost.Lines)
            .SelectMany(line => new[] { line.Conversion.FromRate, line.Conversion.ToRate }).OfType<ExchangeRate>()
            .DistinctBy(rate => (rate.Currency, rate.On)).OrderBy(rate => rate.Currency).ThenBy(rate => rate.On);
        foreach (var rate in rates)
        {
            Row("Exchange rate", rate.UnitsPerEuro, rate.Currency.Code, rate.On, rate.Source);
        }
    }

    private void Quotes(ShortlistReport report)
    {
        Section("Futures quotes", "Quote", "Unit", "Of", "Source");
        var quotes = report.Costs.Values.Select(cost => cost.Quote).OfType<FuturesQuote>()
            .DistinctBy(quote => (quote.Month, quote.On)).OrderBy(quote => quote.Month.ToString(), StringComparer.Ordinal);
        foreach (var quote in quotes)
        {
            Row(quote.Month.ToString(), quote.Quoted, quote.Month.Market.QuoteUnit(), quote.On, quote.Source);
        }
    }

    private void Grounds(ShortlistReport report, int ranked)
    {
        var shortlist = report.Shortlist;
        Section("What the figures rest on", "Figure", "Unit");
        Row("Lots ranked", shortlist.Ranked.Count, ranked < shortlist.Ranked.Count ? $"the first {Printed.Count(ranked)} stand here" : "");
        Row("Lots that fail a gate", shortlist.Failed.Count);
        Row("Lots on another form", shortlist.OtherForm.Count, NotRankedSheet.LeftOut(shortlist) > 0 ? $"the first {Printed.Count(ShortlistWorkbook.MostLots)} of those not ranked stand in “{ShortlistWorkbook.NotRankedName}”" : "");
        Row("Landed costs leg by leg", Math.Min(ranked, ShortlistWorkbook.MostWithLegs), "ranked lots, from the first");
        if (shortlist.Draw is { } draw)
        {
            Row("Draws for the chances", draw.Draws, $"seed {draw.Seed}");
        }

        if (shortlist.Prices is { } prices)
        {
            Row("Past offers for predicted prices", prices.Offers, note: prices.WhyNot ?? "");
            Row("R² of predicted prices", prices.RSquared);
        }
    }

    private void Section(string title, params string[] heads)
    {
        _row += _row == 0 ? 1 : 2;
        _book.Head(_sheet.Cell(_row, 1), title);
        for (var i = 0; i < heads.Length; i++)
        {
            _book.Head(_sheet.Cell(_row, i + 2), heads[i]);
        }
    }

    /// <summary>Writes one line and gives the address of its figure for formulas of other sheets.</summary>
    private string Row(string name, object? value, string unit = "", object? third = null, string note = "")
    {
        _row++;
        _book.Put(_sheet.Cell(_row, 1), name);
        _book.Put(_sheet.Cell(_row, 2), value);
        _sheet.Cell(_row, 2).Style.Alignment.Horizontal = value is string ? XLAlignmentHorizontalValues.Left : XLAlignmentHorizontalValues.Right;
        _book.Put(_sheet.Cell(_row, 3), unit.Length > 0 ? unit : null);
        _book.Put(_sheet.Cell(_row, 4), third);
        _book.Put(_sheet.Cell(_row, 5), note.Length > 0 ? note : null);
        return string.Create(CultureInfo.InvariantCulture, $"'{ShortlistWorkbook.RulesName}'!$B${_row}");
    }
}
