using ClosedXML.Excel;
using GreenLedger.Documents.Choosing;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Documents.Tests.Choosing;

public sealed class ShortlistWorkbookTests
{
    /// <summary>Handbook quality.md section 9, value 27: weights 0.6 and 0.4, anchors at the least and the best.</summary>
    [Theory]
    [InlineData("A", 0.6634)]
    [InlineData("B", 0.5534)]
    [InlineData("C", 0.4000)]
    [InlineData("D", 0.3739)]
    [InlineData("E", 0.6000)]
    public void The_weighted_score_is_a_formula_with_the_value_of_the_handbook(string lot, double expected)
    {
        using var book = Written(Demo.Report(Demo.RunningExample));

        var cell = book.Of(lot, "Weighted score");

        Assert.Contains("'Rules'!", cell.FormulaA1, StringComparison.Ordinal);
        Assert.Equal(expected, cell.CachedNumber(), 4);
    }

    /// <summary>Handbook quality.md section 5, cost per point (i), (ii) and (iii); none is an empty cell.</summary>
    [Theory]
    [InlineData(CostPerPointRule.PricePerPoint, ".1017 .0891 .0821 .0857 .1314")]
    [InlineData(CostPerPointRule.PricePerPointAbove, "1.3538 1.4476 1.7250 1.8000 1.5333")]
    [InlineData(CostPerPointRule.StepUp, ".7600 .5600 - - 1.3143")]
    public void Cost_per_point_is_a_formula_by_the_definition_of_the_rules(CostPerPointRule rule, string expected)
    {
        using var book = Written(Demo.Report(Demo.RunningExample, Demo.Rules with { CostPerPoint = rule }));

        var found = Demo.RunningExample.Select(lot => book.Of(lot.Candidate.Ref, "Cost per point, USD").CachedText());

        Assert.Equal(expected, string.Join(" ", found));
    }

    [Theory]
    [InlineData(CostPerPointRule.PricePerPoint)]
    [InlineData(CostPerPointRule.PricePerPointAbove)]
    [InlineData(CostPerPointRule.StepUp)]
    public void Every_term_of_the_weighted_score_comes_to_what_ranked_the_lots(CostPerPointRule rule)
    {
        var rules = Demo.Rules with { CostPerPoint = rule, Weights = new Weights { Score = 3m, Cost = 2m, CostPerPoint = 4m, Process = 1m } };
        var report = Demo.Report([.. Demo.RunningExample, Demo.Spot("F", 86m, 8m, isNatural: true)], rules);

        using var book = Written(report);

        Assert.All(report.Shortlist.Ranked, entry => Assert.Equal(entry.Terms.Total, book.Of(entry.Candidate.Ref, "Weighted score").CachedNumber(), 9));
    }

    /// <summary>Handbook trade.md section 9, value 29: EUR 122,557.80 and 6.4783 EUR/kg.</summary>
    [Fact]
    public void Landed_cost_is_the_sum_of_its_legs()
    {
        using var book = Written(Demo.Report([Demo.Container("D", 85m)], Euros));

        var (total, perKilogram) = (book.Of("D", "Landed total, EUR"), book.Of("D", "Landed cost, EUR/kg"));

        Assert.Contains("SUMIFS('Landed cost'!", total.FormulaA1, StringComparison.Ordinal);
        Assert.Equal(122_557.80, total.CachedNumber(), 6);
        Assert.Equal(6.4783, perKilogram.CachedNumber(), 4);
    }

    [Fact]
    public void Each_leg_stands_in_its_own_currency_with_the_rates_of_the_day()
    {
        using var book = Written(Demo.Report([Demo.Container("D", 85m)], Euros));

        var freight = book.Worksheet("Landed cost").RowsUsed().Single(row => row.Cell(6).GetString() == "Ocean freight");

        // 3,250 USD ÷ 1.16 USD per EUR = 2,801.72 EUR: handbook trade.md, Example D.
        Assert.Equal((3250.0, "USD", 1.16, 1.0), (freight.Cell(8).GetDouble(), freight.Cell(9).GetString(), freight.Cell(10).GetDouble(), freight.Cell(11).GetDouble()));
        Assert.True(freight.Cell(12).HasFormula);
        Assert.Equal(2801.72, freight.Cell(12).CachedNumber(), 6);
        Assert.Equal(new DateTime(2026, 11, 24), book.RuleRow("Exchange rate").Cell(4).GetDateTime());
        Assert.Equal(286.65, book.RuleRow("KCH27").Cell(2).GetDouble());
    }

    [Fact]
    public void Numbers_are_numbers_with_the_unit_and_currency_in_the_head()
    {
        using var book = Written(Demo.Report(Demo.RunningExample));

        var heads = book.Worksheet("Shortlist").Row(1).CellsUsed().Select(cell => cell.GetString()).ToList();

        Assert.Contains("Score, points", heads);
        Assert.Contains("On offer, kg", heads);
        Assert.Contains("Landed cost, USD/kg", heads);
        Assert.Equal((XLDataType.Number, 86.5), (book.Of("A", "Score, points").DataType, book.Of("A", "Score, points").GetDouble()));
        Assert.Equal("0.0%", book.Of("A", "Chance of being best").Style.NumberFormat.Format);
    }

    [Fact]
    public void Each_list_has_a_frozen_head_and_filters()
    {
        using var book = Written(Demo.Report(Demo.RunningExample));

        var lists = book.Worksheets.Where(sheet => sheet.Name != "Rules").ToList();

        Assert.Equal(["Shortlist", "Landed cost", "Not ranked"], lists.Select(list => list.Name));
        Assert.All(lists, list => Assert.Equal(1, list.SheetView.SplitRow));
        Assert.All(lists, list => Assert.True(list.AutoFilter.IsEnabled));
    }

    [Fact]
    public void A_lot_that_fails_stands_on_its_own_sheet_with_the_gate_named()
    {
        var rules = Demo.Rules with { Gates = new Gates { LeastScore = Score.Of(85m), HighestCostPerKilogram = 11m } };

        using var book = Written(Demo.Report(Demo.RunningExample, rules));

        var failed = book.Worksheet("Not ranked").RowsUsed().Skip(1).ToDictionary(row => row.Cell(1).GetString(), row => row.Cell(7).GetString());
        Assert.Equal(("score", "score", "landed cost"), (failed["C"], failed["D"], failed["E"]));
        Assert.Equal(2.0, book.RuleRow("Score, at least").Cell(4).GetDouble());
    }

    /// <summary>Figures, units and words as they are set here; nothing is computed.</summary>
    [Fact]
    public void The_limit_of_a_gate_is_a_number_with_its_unit_beside_and_the_words_too()
    {
        var rules = Demo.Rules with
        {
            Gates = new Gates
            {
                LeastScore = Score.Of(82.5m),
                HighestCostPerKilogram = 10.75m,
                LeastMoisture = Percent.Of(9m),
                HighestMoisture = Percent.Of(12.5m),
                HighestWaterActivity = WaterActivity.Of(0.6m),
                HighestQuakers = 3,
                Screen = 16,
                LeastRetained = Percent.Of(90m),
                LeastQuantity = Weight.FromKilograms(1200m),
                EarliestCropYear = "2025/26",
            },
        };

        using var book = Written(Demo.Report(Demo.RunningExample, rules));

        (string, double, string, string) Line(string name) =>
            (book.RuleRow(name).Cell(2).DataType.ToString(), book.RuleRow(name).Cell(2).GetDouble(), book.RuleRow(name).Cell(3).GetString(), book.RuleRow(name).Cell(5).GetString());
        Assert.Equal(("Number", 82.5, "points", "at least 82.50"), Line("Score, at least"));
        Assert.Equal(("Number", 10.75, "USD/kg", "at most 10.75 USD/kg"), Line("Landed cost, at most"));
        Assert.Equal(("Number", 9.0, "%", "9 % to 12.5 %"), Line("Moisture, at least"));
        Assert.Equal(("Number", 12.5, "%", ""), Line("Moisture, at most"));
        Assert.Equal(("Number", 0.6, "ratio"), (Line("Water activity, at most").Item1, Line("Water activity, at most").Item2, Line("Water activity, at most").Item3));
        Assert.Equal(("Number", 3.0, "quakers", "at most 3"), Line("Quakers, at most"));
        Assert.Equal(("Number", 90.0, "% kept by screen 16", "at least 90 % kept by screen 16"), Line("Screen, at least"));
        Assert.Equal(("Number", 1200.0, "kg", "at least 1,200 kg"), Line("Quantity, at least"));
        Assert.Equal("2025/26 or later", book.RuleRow("Crop year").Cell(2).GetString());
    }

    [Fact]
    public void Lots_that_are_not_ranked_are_cut_too_and_both_sheets_say_so()
    {
        var rules = Demo.Rules with { Gates = new Gates { LeastScore = Score.Of(90m) } };
        var lots = Enumerable.Range(1, ShortlistWorkbook.MostLots + 5).Select(i => Demo.Spot($"L{i}", 84m + i * 0.001m, 8m)).ToList();

        using var book = Written(Demo.Report(lots, rules));

        var sheet = book.Worksheet("Not ranked");
        Assert.Equal("And 5 lots more that are not ranked: the page shows them all.", sheet.Column(1).LastCellUsed().GetString());
        Assert.Equal(ShortlistWorkbook.MostLots + 3, sheet.Column(1).LastCellUsed().Address.RowNumber);
        Assert.Equal("the first 2,000 of those not ranked stand in “Not ranked”", book.RuleRow("Lots on another form").Cell(3).GetString());
    }

    [Fact]
    public void Neighbours_on_the_front_that_the_cupping_does_not_separate_are_named()
    {
        using var book = Written(Demo.Report(Demo.RunningExample));

        Assert.Equal("not separated by this cupping from C and A", book.Of("B", "Neighbours on the front").GetString());
        Assert.Equal("", book.Of("D", "Neighbours on the front").GetString());
    }

    [Theory]
    [InlineData("=HYPERLINK(\"http://example.org\")")]
    [InlineData("+1")]
    [InlineData("-1+1")]
    [InlineData("@SUM(A1)")]
    [InlineData("1.50")]
    [InlineData("'quoted")]
    public void Text_of_a_supplier_never_becomes_a_formula_or_a_number(string name)
    {
        using var book = Written(Demo.Report([Demo.Spot("A", 86.5m, 8.8m, name)]));

        var cell = book.Of("A", "Lot");

        Assert.False(cell.HasFormula);
        Assert.Equal((XLDataType.Text, name), (cell.DataType, cell.GetString()));
    }

    [Fact]
    public void An_empty_shortlist_is_a_workbook_too()
    {
        var rules = Demo.Rules with { Gates = new Gates { LeastScore = Score.Of(99m) } };

        using var book = Written(Demo.Report(Demo.RunningExample, rules));

        Assert.Equal(1, book.Worksheet("Shortlist").LastRowUsed().RowNumber());
        Assert.Equal(6, book.Worksheet("Not ranked").LastRowUsed().RowNumber());
    }

    [Fact]
    public void A_list_too_long_to_read_is_cut_and_says_so()
    {
        var lots = Enumerable.Range(1, ShortlistWorkbook.MostLots + 5).Select(i => Demo.Spot($"L{i}", 84m + i * 0.001m, 8m)).ToList();

        using var book = Written(Demo.Report(lots));

        Assert.Equal(ShortlistWorkbook.MostLots + 1, book.Worksheet("Shortlist").Column(1).LastCellUsed().Address.RowNumber);
        Assert.Equal("the first 2,000 stand here", book.RuleRow("Lots ranked").Cell(3).GetString());
        Assert.True(book.Of($"L{lots.Count}", "Landed total, USD").HasFormula);
        Assert.Equal((false, 16_800.0), (book.Of("L6", "Landed total, USD").HasFormula, book.Of("L6", "Landed total, USD").GetDouble()));
    }

    [Theory]
    [InlineData("House rules", "Shortlist House rules 2026-11-25")]
    [InlineData("../a\\b:\"c\"", "Shortlist ..-a-b--c- 2026-11-25")]
    public void The_file_is_named_after_the_rules_and_the_day(string rules, string expected)
    {
        var report = Demo.Report(Demo.RunningExample) with { Rules = rules };

        var name = report.FileName;

        Assert.Equal(expected, name);
    }

    internal static RuleTerms Euros { get; } = Demo.Rules with { Currency = Currency.Eur };

    private static XLWorkbook Written(ShortlistReport report)
    {
        var stream = new MemoryStream();
        ShortlistWorkbook.Write(report, stream);
        stream.Position = 0;
        return new XLWorkbook(stream);
    }
}
