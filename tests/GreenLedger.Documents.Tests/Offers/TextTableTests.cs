using System.Text;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;

namespace GreenLedger.Documents.Tests.Offers;

public sealed class TextTableTests
{
    private const string Spot = "Lager-Nr;Herkunft;Region / Station;Aufbereitung;Säcke;Gewicht kg/Sack;Preis €/kg;SCA-Punkte;Bemerkung\r\n"
        + "NB-1;Äthiopien;Dembela, Guji;gewaschen;35;60;9,85;87,5;\r\n"
        + "NB-2;Indonesien;Bukit Lama, Gayo;nass geschält;20;60;8,05;84;Fairtrade/Bio\r\n";

    static TextTableTests() => Encoding.RegisterProvider(CodePagesEncodingProvider.Instance);

    public static TheoryData<string> Encodings() => ["utf-8", "utf-8 mark", "utf-16", "utf-16BE", "utf-16 without mark", "windows-1252"];

    // Worked by hand: 35 × 60 kg = 2,100 kg; 20 × 60 kg = 1,200 kg.
    [Theory]
    [MemberData(nameof(Encodings))]
    public void Umlauts_and_the_euro_sign_survive_in(string encoding)
    {
        var file = Encode(Spot, encoding);

        var rows = Received.Read(file, "nordhafen.csv").Rows;

        Assert.Equal(["ET", "ID"], rows.Select(row => row.CountryCode));
        Assert.Equal(["washed", "wet-hulled"], rows.Select(row => row.Process?.Name));
        Assert.Equal([2100m, 1200m], rows.Select(row => row.Packing.Net!.Value.Kilograms));
        Assert.Equal(PricePerWeight.Of(9.85m, Currency.Eur, PriceUnit.Kilogram), rows[0].Asking.Price);
        Assert.Equal(Incoterm.ExWarehouse, rows[0].Terms.Incoterm);
        Assert.Equal(["fairtrade", "organic"], rows[1].Certificates.Order());
    }

    [Theory]
    [InlineData(",", "\"9,85\"")]
    [InlineData(";", "9,85")]
    [InlineData("\t", "9,85")]
    [InlineData("|", "9.85")]
    public void The_separator_is_told_by_the_lines(string separator, string price)
    {
        var text = string.Join('\n', string.Join(separator, "Ref", "Country", "Process", "Bags", "kg/bag", "EUR/kg"), string.Join(separator, "A-1", "Kenya", "washed", "10", "60", price), string.Join(separator, "A-2", "Peru", "natural", "5", "69", price));

        var rows = Received.Read(Received.Utf8(text), "list.csv").Rows;

        Assert.Equal(["A-1", "A-2"], rows.Select(row => row.Ref));
        Assert.All(rows, row => Assert.Equal(9.85m, row.Asking.Price!.Value.Amount));
    }

    [Fact]
    public void A_line_that_states_the_separator_is_no_row()
    {
        var lines = OfferWorkbook.Read(Received.Utf8("sep=;\nRef;Bags\nA-1;3\n")).ToList();

        Assert.Equal([2, 3], lines.Select(line => line.RowNumber));
        Assert.Equal("A-1", lines[1][0].Text);
    }

    [Fact]
    public void Quoted_cells_may_hold_separators_quotes_and_line_ends()
    {
        var lines = OfferWorkbook.Read(Received.Utf8("Ref,Notes\nA-1,\"plum, \"\"black\"\" tea\nlong\"\nA-2,x\n")).ToList();

        Assert.Equal("plum, \"black\" tea\nlong", lines[1][1].Text);
        Assert.Equal("A-2", lines[2][0].Text);
    }

    [Fact]
    public void Text_that_looks_like_a_formula_stays_text()
    {
        var text = "Ref;Producer;Bags;kg/bag;USD/kg\n=HYPERLINK(\"http://x\");@farm;10;60;4.20\n+1+1;-cmd|' /C calc'!A0;10;60;4.20\n";

        var rows = Received.Read(Received.Utf8(text), "list.csv").Rows;

        Assert.Equal(["=HYPERLINK(\"http://x\")", "+1+1"], rows.Select(row => row.Ref));
        Assert.Equal("@farm", rows[0].Producer);
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("   \n\n", "no workbook")]
    [InlineData("%PDF-1.7 …", "PDF")]
    [InlineData("PK\u0003\u0004 not a zip", "damaged")]
    [InlineData("\u0001\u0002\u0003\u0004", "no workbook")]
    public void A_file_of_another_kind_is_refused_in_a_sentence(string content, string says)
    {
        var refusal = Assert.Throws<RuleBrokenException>(() => OfferWorkbook.Read(Received.Utf8(content)).ToList());

        Assert.Contains(says, refusal.Message, StringComparison.Ordinal);
        Assert.Equal("File", refusal.Field);
    }

    [Fact]
    public void An_old_workbook_is_refused_in_a_sentence()
    {
        var refusal = Assert.Throws<RuleBrokenException>(() => OfferWorkbook.Read([0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1, 0]));

        Assert.Contains(".xlsx", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_with_one_column_has_no_table()
    {
        Assert.Throws<RuleBrokenException>(() => ListLook.Of(OfferWorkbook.Read(Received.Utf8("hello\nworld\n")), "x.csv"));
    }

    private static byte[] Encode(string text, string name)
    {
        var encoding = name switch
        {
            "utf-8" or "utf-8 mark" => Encoding.UTF8,
            "utf-16BE" => Encoding.BigEndianUnicode,
            "windows-1252" => Encoding.GetEncoding(1252),
            _ => Encoding.Unicode,
        };
        var bytes = encoding.GetBytes(text);
        return name is "utf-8" or "windows-1252" or "utf-16 without mark" ? bytes : [.. encoding.GetPreamble(), .. bytes];
    }
}
