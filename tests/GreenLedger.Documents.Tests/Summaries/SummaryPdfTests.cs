using System.Globalization;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain.Summaries;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;

namespace GreenLedger.Documents.Tests.Summaries;

public sealed class SummaryPdfTests
{
    [Fact]
    public void It_says_for_whom_of_what_and_when()
    {
        using var pdf = Written(Bought.Report());

        var text = pdf.Words();

        Assert.Contains("Harbour & Hill Roasters Purchase summary 1 Jan 2026 to 31 Dec 2026, all purchases. Taken out by Ana Ruiz, 25 Nov 2026, 09:30 UTC.", text, StringComparison.Ordinal);
        Assert.Contains("What is not fixed is taken at the last quote", text, StringComparison.Ordinal);
    }

    /// <summary>Worked by hand beside the lots: 24,690 kg for 170,160.00 EUR, 6.89 EUR/kg; Kenya 5,490 kg for 51,120.00.</summary>
    [Fact]
    public void Its_tables_have_the_totals_of_their_rows()
    {
        using var pdf = Written(Bought.Report());

        var text = pdf.Words();

        Assert.Contains("Contracted 3 24,690 170,160.00 6.89 45,120.00 3,450 20,700.00 6.00", text, StringComparison.Ordinal);
        Assert.Contains("Kenya 2 5,490 51,120.00", text, StringComparison.Ordinal);
        Assert.Contains("Total 3 24,690 170,160.00", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_one_has_contents_repeated_heads_and_numbered_pages()
    {
        using var pdf = Written(Bought.Report(Many(110), Cut.Supplier));

        var pages = pdf.GetPages().Select(page => string.Join(" ", page.GetWords().Select(word => word.Text))).ToList();

        Assert.True(pages.Count >= SummaryPdf.LongFrom, $"{pages.Count} pages");
        Assert.All(pages.Index(), page => Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"page {page.Index + 1} of {pages.Count}"), page.Item, StringComparison.Ordinal));
        Assert.InRange(pages.Count(page => page.Contains("Supplier Lots", StringComparison.Ordinal) && page.Contains("Shipped,", StringComparison.Ordinal)), 2, 9);
        var listed = Assert.Single(pages.Index(), page => page.Item.Contains("Contents", StringComparison.Ordinal));
        Assert.Equal(0, listed.Index);
        foreach (var title in new[] { "By supplier", "Scores, bought against offered", "What the figures mean" })
        {
            var page = pages.FindLastIndex(page => page.Contains(title, StringComparison.Ordinal)) + 1;
            Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{title} {page}"), pages[0], StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Nothing_runs_over_the_edge_of_a_page()
    {
        using var pdf = Written(Bought.Report(Many(60), Cut.Supplier));

        Assert.All(pdf.GetPages(), page => Assert.All(page.Letters.Where(letter => letter.Value.Trim().Length > 0), letter => Assert.True(
            letter.BoundingBox.Left >= 39 && letter.BoundingBox.Right <= 557 && letter.BoundingBox.Bottom >= 15 && letter.BoundingBox.Top <= 803,
            $"'{letter.Value}' at {letter.BoundingBox} of page {page.Number}")));
    }

    [Fact]
    public void It_is_tagged_names_its_title_and_language_and_has_its_faces_in_it()
    {
        using var pdf = Written(Bought.Report());

        var catalog = pdf.Structure.Catalog.CatalogDictionary;
        Assert.Equal("Purchase summary, 1 Jan 2026 to 31 Dec 2026, all purchases", pdf.Information.Title);
        Assert.True(catalog.ContainsKey(NameToken.Create("StructTreeRoot")));
        Assert.Contains("en-GB", catalog.Data["Lang"].ToString(), StringComparison.Ordinal);
        Assert.All(pdf.GetPages().SelectMany(page => page.Letters).Select(letter => letter.FontName).Distinct(), face => Assert.Matches("^[A-Z]{6}\\+Source Sans 3", face!)); // a subset of its own, by ISO 32000-1, 9.6.4
    }

    [Fact]
    public void A_period_without_purchases_says_so_and_is_a_page()
    {
        using var pdf = Written(Bought.Report([Bought.Lots[3]]));

        Assert.Contains("Contracted 0 0 0.00 –", pdf.Words(), StringComparison.Ordinal);
    }

    private static List<PurchasedLot> Many(int count) =>
        [.. Enumerable.Range(1, count).Select(i => Bought.Lot("Peru", 690m + i, 6_000m + i, 80m + i % 8, new DateOnly(2026, 1, 1).AddDays(i * 3 % 330), $"Cooperativa Agraria Cafetalera San Martín de Pangoa {i}"))];

    private static PdfDocument Written(SummaryReport report)
    {
        var stream = new MemoryStream();
        SummaryPdf.Write(report, stream);
        return PdfDocument.Open(stream.ToArray());
    }
}
