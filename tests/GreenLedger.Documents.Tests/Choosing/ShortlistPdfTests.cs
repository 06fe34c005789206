using GreenLedger.Documents.Choosing;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using UglyToad.PdfPig;

namespace GreenLedger.Documents.Tests.Choosing;

public sealed class ShortlistPdfTests
{
    [Fact]
    public void It_says_by_what_rules_for_whom_and_when()
    {
        using var pdf = Written(Demo.Report(Demo.RunningExample));

        var text = pdf.Words();

        Assert.Contains("Harbour & Hill Roasters", text, StringComparison.Ordinal);
        Assert.Contains("Offers of 25 Nov 2026, ranked by “House rules” (revision 2).", text, StringComparison.Ordinal);
        Assert.Contains("Taken out by Ana Ruiz, 25 Nov 2026, 09:30 UTC.", text, StringComparison.Ordinal);
        Assert.Contains("Weights: score 60 %, landed cost 40 %.", text, StringComparison.Ordinal);
    }

    /// <summary>Handbook quality.md section 5: A first at 86.50 points and 8.80 USD/kg, 0.1017 USD a point.</summary>
    [Fact]
    public void The_ranking_stands_in_a_table_with_units_in_its_head()
    {
        using var pdf = Written(Demo.Report(Demo.RunningExample));

        var text = pdf.Words();

        Assert.Contains("First is A Lot A: 86.50 points at 8.80 USD/kg landed.", text, StringComparison.Ordinal);
        Assert.Contains("USD/kg", text, StringComparison.Ordinal);
        Assert.Contains("0.1017", text, StringComparison.Ordinal);
        Assert.Contains("85.72 to 87.28", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_three_have_their_reasons_in_words()
    {
        using var pdf = Written(Demo.Report(Demo.RunningExample));

        var text = pdf.Words();

        Assert.Contains("Rank 1 of 5: passes every gate, weighted score 0.6634.", text, StringComparison.Ordinal);
        Assert.Contains("Rank 3 of 5:", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Rank 4 of 5:", text, StringComparison.Ordinal);
    }

    /// <summary>The running example's errors of 0.4 leave intervals of ± 0.78: every step of its front is less than two of them.</summary>
    [Fact]
    public void Neighbours_on_the_front_that_the_cupping_does_not_separate_are_named()
    {
        using var pdf = Written(Demo.Report(Demo.RunningExample));

        Assert.Contains("On the front, not separated by this cupping: C and B; B and A; A and E", pdf.Words(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_fails_is_named_by_its_gate()
    {
        var rules = Demo.Rules with { Gates = new Gates { LeastScore = Score.Of(85m) } };

        using var pdf = Written(Demo.Report(Demo.RunningExample, rules));

        Assert.Contains("Gates: score at least 85.00.", pdf.Words(), StringComparison.Ordinal);
        Assert.Contains("Score (2): C Lot C, D Lot D.", pdf.Words(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(12)]
    [InlineData(45)]
    [InlineData(600)]
    public void However_long_the_list_it_takes_one_or_two_pages_and_nothing_overflows(int lots)
    {
        var many = Enumerable.Range(1, lots).Select(i => Demo.Spot($"LOT-{i:000}", 84m + i % 36 * 0.1m, 6.9m + i % 17 * 0.25m, $"Finca La Esperanza de los Altos, lot {i}", i % 3 == 0));

        using var pdf = Written(Demo.Report([.. many]));

        Assert.InRange(pdf.NumberOfPages, 1, 2);
        Assert.All(pdf.GetPages(), page => Assert.All(page.Letters.Where(letter => letter.Value.Trim().Length > 0), letter => Assert.True(
            letter.BoundingBox.Left >= 39 && letter.BoundingBox.Right <= 556 && letter.BoundingBox.Bottom >= 15 && letter.BoundingBox.Top <= 803,
            $"'{letter.Value}' at {letter.BoundingBox} of page {page.Number}")));
        Assert.Equal(lots > 40, pdf.Words().Contains("more, see the workbook.", StringComparison.Ordinal));
    }

    [Fact]
    public void No_label_of_the_chart_covers_another()
    {
        var close = Enumerable.Range(1, 30).Select(i => Demo.Spot($"N{i}", 86m + i % 4 * 0.02m, 8m + i % 5 * 0.02m));

        using var pdf = Written(Demo.Report([.. close]));

        var labels = pdf.GetPage(1).GetWords().Where(word => word.Text.StartsWith('N') && char.IsDigit(word.Text[^1]) && word.BoundingBox.Bottom > 380).ToList();
        Assert.NotEmpty(labels);
        Assert.All(labels, one => Assert.DoesNotContain(labels, other => other != one && Overlap(one.BoundingBox, other.BoundingBox)));
    }

    [Fact]
    public void An_empty_ranking_is_said_and_not_drawn()
    {
        var rules = Demo.Rules with { Gates = new Gates { LeastScore = Score.Of(99m) } };

        using var pdf = Written(Demo.Report(Demo.RunningExample, rules));

        Assert.Equal(1, pdf.NumberOfPages);
        Assert.Contains("0 lots pass every gate, 5 fail one.", pdf.Words(), StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_tagged_and_names_its_title_and_language()
    {
        var stream = new MemoryStream();
        ShortlistPdf.Write(Demo.Report(Demo.RunningExample), stream);

        using var pdf = PdfDocument.Open(stream.ToArray());

        var catalog = pdf.Structure.Catalog.CatalogDictionary;
        Assert.Equal("Shortlist by House rules, 25 Nov 2026", pdf.Information.Title);
        Assert.True(catalog.ContainsKey(UglyToad.PdfPig.Tokens.NameToken.Create("StructTreeRoot")));
        Assert.Contains("en-GB", catalog.Data["Lang"].ToString(), StringComparison.Ordinal);
    }

    /// <summary>A file of a supplier's words must not end a page in trouble: long, foreign, with what no face has.</summary>
    [Fact]
    public void Long_and_foreign_names_are_printed()
    {
        using var pdf = Written(Demo.Report([Demo.Spot("Ł-1", 86m, 8m, "Häuser Çiğdem São João " + new string('x', 200) + " 咖啡")]));

        Assert.Contains("Häuser Çiğdem São João", pdf.Words(), StringComparison.Ordinal);
    }

    private static PdfDocument Written(ShortlistReport report)
    {
        var stream = new MemoryStream();
        ShortlistPdf.Write(report, stream);
        return PdfDocument.Open(stream.ToArray());
    }

    private static bool Overlap(UglyToad.PdfPig.Core.PdfRectangle one, UglyToad.PdfPig.Core.PdfRectangle other) =>
        one.Left < other.Right && other.Left < one.Right && one.Bottom < other.Top && other.Bottom < one.Top;
}
