using GreenLedger.Documents.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using UglyToad.PdfPig;

namespace GreenLedger.Documents.Tests.Cupping;

public sealed class PapersOfATableTests
{
    private static readonly FlightOnPaper[] Flights = [new(1, ["417", "862", "539"]), new(2, ["274", "951"])];

    private static readonly TableOnPaper Table = new(
        "Harbour & Hill Roasters", "Tuesday table", new DateOnly(2026, 11, 24), "100-point form, 2004", CuppingForm.HundredPoint().Rules, 5,
        new TablePlan(150, Weight.FromGrams(8.25m), "filtered, 93 °C when poured"), TastingProtocol.Usual().Steps, Flights,
        [
            new("Ines Duarte", [new(1, ["862", "417", "539"]), new(2, ["951", "274"])]),
            new("Jonas Weber", [new(1, ["539", "862", "417"]), new(2, ["274", "951"])]),
        ],
        ["Noor Haddad"], IsByPlace: false);

    [Fact]
    public void The_plan_says_flights_cups_orders_and_steps()
    {
        using var pdf = Printed(PlanPaper.Write, Table);

        var text = pdf.Words();
        // 3 codes of 5 cups and 2 codes of 5 cups.
        Assert.Contains("1 417 · 862 · 539 15", text, StringComparison.Ordinal);
        Assert.Contains("2 274 · 951 10", text, StringComparison.Ordinal);
        Assert.Contains("Ines Duarte 1 862 · 417 · 539", text, StringComparison.Ordinal);
        Assert.Contains("Jonas Weber 1 539 · 862 · 417", text, StringComparison.Ordinal);
        Assert.Contains("Poured by Noor Haddad.", text, StringComparison.Ordinal);
        // 8.25 g in 150 mL is 55 g in a litre: handbook quality.md section 1.1. The break comes at four minutes there.
        Assert.Contains("8.25 g of whole beans in 150 mL (55.0 g a litre)", text, StringComparison.Ordinal);
        Assert.Contains("4:00 min Break the crust", text, StringComparison.Ordinal);
        Assert.Contains("scalds", text, StringComparison.Ordinal);
        Assert.Contains($"page 1 of {pdf.NumberOfPages}", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_cupper_has_sheets_in_the_own_order_beginning_on_a_page_of_their_own()
    {
        using var pdf = Printed(SheetsPaper.Write, Table);

        var pages = pdf.GetPages().Select(page => string.Join(" ", page.GetWords().Select(word => word.Text))).ToList();
        var second = pages.FindIndex(page => page.StartsWith("Jonas Weber", StringComparison.Ordinal));
        Assert.StartsWith("Ines Duarte", pages[0], StringComparison.Ordinal);
        InOrder(string.Join(" ", pages.Take(second)), "862 1 of 5 · flight 1 · Ines Duarte", "417 2 of 5", "539 3 of 5", "951 4 of 5 · flight 2", "274 5 of 5");
        InOrder(string.Join(" ", pages.Skip(second)), "539 1 of 5 · flight 1 · Jonas Weber", "862 2 of 5", "417 3 of 5", "274 4 of 5 · flight 2", "951 5 of 5");
        Assert.Contains($"page {pages.Count} of {pages.Count}", pages[^1], StringComparison.Ordinal);
    }

    /// <summary>Attributes, steps and deductions are those of handbook quality.md sections 1.1 and 1.2.</summary>
    [Fact]
    public void A_sheet_has_the_attributes_the_steps_and_the_sum_of_its_form()
    {
        using var hundred = Printed(SheetsPaper.Write, One(CuppingForm.HundredPoint()));
        using var affective = Printed(SheetsPaper.Write, One(CuppingForm.Affective()));

        var (text, other) = (hundred.Words(), affective.Words());
        Assert.All(["Fragrance/aroma", "Flavor", "Aftertaste", "Acidity", "Body", "Balance", "Overall", "Uniformity: good cups", "Clean cup: good cups", "Sweetness: good cups", "Taint: cups", "Fault: cups", "Notes"],
            line => Assert.Contains(line, text, StringComparison.Ordinal));
        Assert.Contains("6 7 8 9 10", Ruler(text), StringComparison.Ordinal);
        Assert.Contains("+ 2 for each cup good by uniformity or clean cup or sweetness − 2 for each cup ticked as taint − 4 for each cup ticked as fault.", text, StringComparison.Ordinal);
        Assert.All(["Fragrance", "Aroma", "Flavor", "Aftertaste", "Acidity", "Sweetness", "Mouthfeel", "Overall", "Non-uniform: cups", "Defective: cups"],
            line => Assert.Contains(line, other, StringComparison.Ordinal));
        Assert.Contains("1 2 3 4 5 6 7 8 9", Ruler(other), StringComparison.Ordinal);
        Assert.Contains("the sum of the marks × 0.65625 + 52.75 − 2 for each cup ticked as non-uniform − 4 for each cup ticked as defective, rounded half up to 0.25.", other, StringComparison.Ordinal);
    }

    /// <summary>Intensities and words are those of handbook quality.md section 1.2.</summary>
    [Fact]
    public void A_table_with_the_descriptive_form_has_it_below_every_score()
    {
        var rules = DescriptiveForm.Sca103().Rules;
        using var pdf = Printed(SheetsPaper.Write, Table with { Descriptive = rules, Cuppers = [Table.Cuppers[0]] });

        var pages = pdf.GetPages().Select(page => string.Join(" ", page.GetWords().Select(word => word.Text))).ToList();
        var text = string.Join(" ", pages);
        Assert.Equal(5, Times(text, "Main tastes: tick at most 2 salty sour sweet bitter umami"));
        // Two lists have the families, for each of five codes.
        Assert.Equal(10, Times(text, "nutty/cocoa nutty cocoa"));
        Assert.All(rules.Intensities.Where(line => line.Key is "fragrance" or "mouthfeel"), line => Assert.True(Times(text, line.Name) >= 5, line.Name));
        Assert.Contains("gives no points", text, StringComparison.Ordinal);
        Assert.All(pages, page => Assert.Equal(Times(page, "Notes"), Times(page, "Main tastes")));
        using var without = Printed(SheetsPaper.Write, Table);
        Assert.DoesNotContain("Main tastes", without.Words(), StringComparison.Ordinal);

        static int Times(string whole, string part) => whole.Split(part).Length - 1;
    }

    /// <summary>Worked by hand: 5 codes of 5 cups are 25 labels, 24 on the first sheet of 3 × 8.</summary>
    [Fact]
    public void Every_cup_has_a_label_with_its_code_and_its_number()
    {
        using var pdf = Printed((table, stream) => CupLabels.Write(LabelSheet.Find("a4-3x8")!, table, 1, stream), Table);

        var words = pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text).ToList();
        Assert.Equal(2, pdf.NumberOfPages);
        Assert.All(Flights.SelectMany(flight => flight.Codes), code => Assert.Equal(5, words.Count(word => word == code)));
        using var roll = Printed((table, stream) => CupLabels.Write(LabelSheet.Find("single-62x29")!, table, 1, stream), Table);
        Assert.Equal("274 cup 5 of 5 · flight 2", string.Join(" ", roll.GetPage(20).GetWords().Select(word => word.Text)));
        Assert.Equal("From", Assert.Throws<RuleBrokenException>(() => CupLabels.Write(LabelSheet.Find("a4-3x8")!, Table, 25, new MemoryStream())).Field);
    }

    [Fact]
    public void One_cupper_alone_writes_by_place_and_finds_the_codes_under_the_bowls()
    {
        var alone = Table with { Flights = [Flights[0]], Cuppers = [new("Ines Duarte", [new(1, ["P1", "P2", "P3"])])], Pourers = [], IsByPlace = true };
        using var sheets = Printed(SheetsPaper.Write, alone);
        using var labels = Printed((table, stream) => CupLabels.Write(LabelSheet.Find("single-62x29")!, table, 1, stream), alone);
        using var codes = Printed((_, stream) => UndersidesPaper.Write("Harbour & Hill Roasters", "Alone", new DateOnly(2026, 11, 24), 3, [new("417", "ACDEF"), new("862", "GHJKM")], stream), alone);

        InOrder(sheets.Words(), "P1 1 of 3", "P2 2 of 3", "P3 3 of 3");
        Assert.All(Flights[0].Codes, code => Assert.DoesNotContain(code, sheets.Words(), StringComparison.Ordinal));
        Assert.Equal(15, labels.NumberOfPages);
        Assert.Contains("under the bowl", labels.Words(), StringComparison.Ordinal);
        Assert.Contains("417 ACDEF 3 862 GHJKM 3", codes.Words(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_key_names_who_opened_it_on_every_page()
    {
        using var stream = new MemoryStream();
        KeyPaper.Write(
            new PrintedKey("Harbour & Hill Roasters", "Tuesday table", new DateOnly(2026, 11, 24), "Noor Haddad", new DateTimeOffset(2026, 11, 24, 9, 5, 0, TimeSpan.Zero), ClockZone.Of("Africa/Nairobi"), 5,
                [.. Enumerable.Range(0, 60).Select(number => new KeyLine(1 + number / 40, $"{300 + number}", $"LABEL{number}", $"Vale Fundo {number}", number == 7 ? "hidden duplicate" : ""))]),
            stream);
        using var pdf = PdfDocument.Open(stream.ToArray());

        Assert.Equal("Key · Tuesday table", pdf.Information.Title);
        // Nairobi is three hours ahead of UTC.
        Assert.Contains("opened 24 Nov 2026, 12:05 UTC+3", pdf.Words(), StringComparison.Ordinal);
        Assert.True(pdf.NumberOfPages > 1);
        Assert.All(pdf.GetPages(), page => Assert.Contains("for Noor Haddad alone", string.Join(" ", page.GetWords().Select(word => word.Text)), StringComparison.Ordinal));
        Assert.Contains("307 LABEL7 Vale Fundo 7 5 hidden duplicate", pdf.Words(), StringComparison.Ordinal);
        Assert.Contains("whoever opened the key and scores is marked not blind", pdf.Words(), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_paper_names_its_title_and_has_its_faces_in_it()
    {
        foreach (var (title, write) in new (string, Action<TableOnPaper, Stream>)[] { ("Table plan", PlanPaper.Write), ("Score sheets", SheetsPaper.Write) })
        {
            using var pdf = Printed(write, Table);

            Assert.Equal($"{title} · Tuesday table", pdf.Information.Title);
            Assert.All(pdf.GetPages().SelectMany(page => page.Letters).Select(letter => letter.FontName).Distinct(), face => Assert.Contains("Source", face, StringComparison.Ordinal));
        }
    }

    private static TableOnPaper One(CuppingForm form) =>
        Table with { Rules = form.Rules, Form = form.ToString(), Flights = [new(1, ["417"])], Cuppers = [new(null, [new(1, ["417"])])] };

    /// <summary>The numbers of a text alone, as they follow one another.</summary>
    private static string Ruler(string text) => string.Join(" ", text.Split(' ').Where(word => int.TryParse(word, out _)));

    private static void InOrder(string text, params string[] parts)
    {
        var places = parts.Select(part => text.IndexOf(part, StringComparison.Ordinal)).ToList();
        Assert.All(parts.Zip(places), part => Assert.True(part.Second >= 0, part.First));
        Assert.Equal(places.Order(), places);
    }

    private static PdfDocument Printed(Action<TableOnPaper, Stream> write, TableOnPaper table)
    {
        using var stream = new MemoryStream();
        write(table, stream);
        return PdfDocument.Open(stream.ToArray());
    }
}
