using GreenLedger.Documents.Layout;
using UglyToad.PdfPig;

namespace GreenLedger.Documents.Tests.Layout;

public sealed class PaperTests
{
    [Fact]
    public void A_paragraph_wraps_between_words_and_goes_on_over_the_page()
    {
        var paper = new Paper("Letter", "Ana Ruiz", "A letter");
        paper.Text(string.Join(" ", Enumerable.Range(1, 2000)), TextStyle.Body);

        using var pdf = Saved(paper);

        Assert.Equal(paper.PageCount, pdf.NumberOfPages);
        Assert.InRange(pdf.NumberOfPages, 2, 3);
        Assert.Contains("1998 1999 2000", pdf.Words(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_keeps_its_per_cent_sign()
    {
        var breaker = new LineBreaker();

        var lines = breaker.Lines(string.Join(" ", Enumerable.Repeat("in 100 %", 60)), TextStyle.Body.Font, 90);

        Assert.True(lines.Count > 10);
        Assert.DoesNotContain(lines, line => line.StartsWith('%'));
    }

    [Fact]
    public void A_word_wider_than_the_page_is_broken()
    {
        var paper = new Paper("Letter", "Ana Ruiz", "A letter");
        paper.Text(new string('m', 300), TextStyle.Body);

        using var pdf = Saved(paper);

        Assert.True(pdf.GetPage(1).Letters.Where(letter => letter.Value == "m").Max(letter => letter.BoundingBox.Right) <= Paper.Left + Paper.Width + 0.5);
        Assert.Equal(300, pdf.GetPage(1).Letters.Count(letter => letter.Value == "m"));
    }

    [Fact]
    public void A_long_table_repeats_its_head_on_every_page()
    {
        var paper = new Paper("List", "Ana Ruiz", "A list");
        paper.Table([new PaperColumn("Lot", 3), new PaperColumn("Quantity, kg", 1, true)], [.. Enumerable.Range(1, 120).Select(i => new PaperCell[] { $"Lot {i}", $"{i * 10}" })]);

        using var pdf = Saved(paper);

        Assert.InRange(pdf.NumberOfPages, 2, 4);
        Assert.All(pdf.GetPages(), page => Assert.Contains(page.GetWords(), word => word.Text == "Quantity,"));
        Assert.Contains("Lot 120 1200", pdf.Words(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_higher_than_what_is_left_goes_whole_to_the_next_page()
    {
        var paper = new Paper("List", "Ana Ruiz", "A list");
        var tall = string.Join("\n", Enumerable.Range(1, 40).Select(i => $"line {i}"));
        paper.Table([new PaperColumn("Lot", 1)], [new PaperCell[] { tall }, new PaperCell[] { tall }]);

        using var pdf = Saved(paper);

        Assert.Equal(2, pdf.NumberOfPages);
        Assert.All(pdf.GetPages(), page => Assert.Equal(40, page.GetWords().Count(word => word.Text == "line")));
    }

    [Fact]
    public void A_heading_stays_with_what_follows_it()
    {
        var paper = new Paper("Letter", "Ana Ruiz", "A letter");
        while (paper.Room > 45)
        {
            paper.Text("line", TextStyle.Body);
        }

        paper.Text("Heading", TextStyle.Heading);
        paper.Text("first words", TextStyle.Body);

        using var pdf = Saved(paper);
        Assert.Equal(2, pdf.NumberOfPages);
        Assert.StartsWith("Heading first words", string.Join(" ", pdf.GetPage(2).GetWords().Select(word => word.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public void Each_page_ends_in_its_number_of_how_many()
    {
        var paper = new Paper("Letter", "Ana Ruiz", "A letter");
        paper.Text("one", TextStyle.Body);
        paper.NewPage();
        paper.Text("two", TextStyle.Body);

        using var pdf = Saved(paper);

        Assert.EndsWith("A letter page 1 of 2", string.Join(" ", pdf.GetPage(1).GetWords().Select(word => word.Text)), StringComparison.Ordinal);
        Assert.EndsWith("A letter page 2 of 2", string.Join(" ", pdf.GetPage(2).GetWords().Select(word => word.Text)), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_letter_we_print_is_in_the_embedded_face()
    {
        const string letters = "áàâãäåçéèêëíñóôõöøúüýßœæŁžğ ÀÉÎÕÜÇŠ ±≥≤−×÷·–“”’…€£¢²→";
        var paper = new Paper("Letter", "Ana Ruiz", "A letter");
        paper.Text(letters, TextStyle.Body);

        using var pdf = Saved(paper);

        Assert.Contains(letters.Replace(" ", "", StringComparison.Ordinal), pdf.Words().Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.All(pdf.GetPage(1).Letters, letter => Assert.Contains("Source Sans 3", letter.FontName, StringComparison.Ordinal));
    }

    private static PdfDocument Saved(Paper paper)
    {
        var stream = new MemoryStream();
        paper.Save(stream);
        return PdfDocument.Open(stream.ToArray());
    }
}
