using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using ClosedXML.Excel;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;

namespace GreenLedger.Documents.Tests.Offers;

public sealed class WorkbookTests
{
    /// <summary>An invented exporter's list: a merged title, Spanish headings, points and commas mixed, a sold lot, a footer.</summary>
    private static byte[] Andes() => Workbook(book =>
    {
        var sheet = book.AddWorksheet("Oferta");
        sheet.Cell("A1").Value = "Exportadora Loma Brava S.A.S.";
        sheet.Range("A1:H1").Merge();
        sheet.Cell("A2").Value = "All prices FOB Cartagena, valid until 15 December 2026";
        sheet.Cell("A3").Value = "Crop 2026/27";
        Row(sheet, 5, "Ref.", "Finca", "Beneficio / Process", "Altura (msnm)", "Puntaje taza", "Sacos", "kg/saco", "Precio FOB (USc/lb)", "Disponible");
        Row(sheet, 6, "LB-1", "El Roble", "Lavado", "'1.720", "'86,50", 38, 70, "'412,50", "Si");
        Row(sheet, 7, "LB-2", "La Honda", "Honey", 1650, 84.25, 120, 70, 338, "VENDIDO");
        Row(sheet, 8, "LB-3", "Los Pinos", "Natural", "'1900-2050", "'85.25", 250, 70, "'344,75", "ene 2027");
        sheet.Cell("A10").Value = "Lista sujeta a venta previa.";
    });

    // Worked by hand: 412.50 c/lb ÷ 100 ÷ 0.45359237 = 9.0941 USD/kg; 38 × 70 = 2,660; 120 × 70 = 8,400; 250 × 70 = 17,500.
    [Fact]
    public void A_list_with_titles_and_mixed_decimal_marks_is_read_whole()
    {
        var rows = Received.Read(Andes(), "list.xlsx").Rows;

        Assert.Equal([2660m, 8400m, 17500m], rows.Select(row => row.Packing.Net!.Value.Kilograms));
        Assert.Equal([86.5m, 84.25m, 85.25m], rows.Select(row => row.StatedScore!.Value.Points));
        Assert.Equal([(1720, 1720), (1650, 1650), (1900, 2050)], rows.Select(row => (row.AltitudeFrom!.Value, row.AltitudeTo!.Value)));
        Assert.Equal(9.0941m, Math.Round(rows[0].Asking.Price!.Value.PerKilogram, 4));
        Assert.Equal([OfferState.OnOffer, OfferState.Sold, OfferState.OnOffer], rows.Select(row => row.State));
        Assert.Equal(new DateOnly(2027, 1, 1), rows[2].Terms.AvailableFrom);
        Assert.All(rows, row => Assert.Equal((Incoterm.Fob, "Cartagena", new DateOnly(2026, 12, 15)), (row.Terms.Incoterm!.Value, row.Terms.Place, row.Terms.ValidUntil!.Value)));
        Assert.All(rows, row => Assert.Equal(("CO", "2026/27"), (row.CountryCode, row.CropYear)));
    }

    [Fact]
    public void The_sender_and_the_language_are_told_from_the_list()
    {
        var look = ListLook.Of(OfferWorkbook.Read(Andes()), "list.xlsx");

        Assert.Equal("Exportadora Loma Brava S.A.S.", MappingProposal.SenderOf(look));
        Assert.Equal("es", MappingProposal.LanguageOf(look));
    }

    // Worked by hand: 320 × 60 = 19,200; 19 × 1000 = 19,000; 40 × 30 = 1,200.
    [Fact]
    public void Differentials_packaging_and_two_lines_of_headings_are_read()
    {
        var file = Workbook(book =>
        {
            var sheet = book.AddWorksheet("Ofertas");
            sheet.Cell("B2").Value = "Cooperativa Vale Fundo - safra 2026";
            sheet.Cell("B3").Value = "Preço: diferencial em US¢/lb sobre NY (KC) março 2027, FOB Santos";
            Row(sheet, 5, "", "Lote", "Fazenda", "Processo", "Pontuação", "Embalagem", "Qtd", "Dif.");
            Row(sheet, 6, "", "", "", "", "SCA", "", "", "US¢/lb");
            Row(sheet, 7, "", "VF-1", "Fazenda Alta", "Cereja descascado", 84.5, "saca 60 kg juta", 320, "'+46,5");
            Row(sheet, 8, "", "VF-2", "Fazenda Baixa", "Natural", 82, "big bag 1000 kg", 19, "'-4");
            Row(sheet, 9, "", "VF-3", "Sítio Novo", "Fermentado anaeróbico", 87.5, "saca 30 kg vácuo", 40, "'+185");
        });

        var rows = Received.Read(file, "ofertas.xlsx").Rows;

        Assert.Equal([46.5m, -4m, 185m], rows.Select(row => row.Asking.Differential!.Value.Quoted));
        Assert.All(rows, row => Assert.Equal(FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3), row.Asking.Differential!.Value.Month));
        Assert.Equal([19200m, 19000m, 1200m], rows.Select(row => row.Packing.Net!.Value.Kilograms));
        Assert.Equal(["pulped natural", "natural", "anaerobic"], rows.Select(row => row.Process?.Name));
        Assert.All(rows, row => Assert.Equal(("Santos", "BR", "2026"), (row.Terms.Place, row.CountryCode, row.CropYear)));
    }

    [Fact]
    public void Sheets_are_read_together_and_hidden_ones_left_alone()
    {
        var file = Workbook(book =>
        {
            foreach (var (name, reference) in new[] { ("Kenya", "K-1"), ("Peru", "P-1"), ("Old", "X-1") })
            {
                var sheet = book.AddWorksheet(name);
                Row(sheet, 1, "Ref", "Process", "Bags", "kg/bag", "USD/kg");
                Row(sheet, 2, reference, "washed", 10, 60, 7.5);
            }

            book.Worksheet("Old").Hide();
        });

        var rows = Received.Read(file, "all.xlsx").Rows;

        Assert.Equal([("K-1", "KE"), ("P-1", "PE")], rows.Select(row => (row.Ref, row.CountryCode!)));
    }

    [Fact]
    public void A_hidden_row_is_set_aside_and_never_lost()
    {
        var file = Workbook(book =>
        {
            var sheet = book.AddWorksheet("List");
            Row(sheet, 1, "Ref", "Process", "Bags", "kg/bag", "USD/kg");
            Row(sheet, 2, "A-1", "washed", 10, 60, 7.5);
            Row(sheet, 3, "A-2", "washed", 10, 60, 7.5);
            sheet.Row(3).Hide();
        });

        var reading = Received.Read(file, "list.xlsx");

        Assert.Equal(["A-1"], reading.Rows.Select(row => row.Ref));
        Assert.Equal(3, Assert.Single(reading.SetAside).Problem.Row);
        Assert.Contains("hid this row", reading.SetAside[0].Problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_merged_cell_counts_for_every_row_that_it_covers()
    {
        var file = Workbook(book =>
        {
            var sheet = book.AddWorksheet("List");
            Row(sheet, 1, "Ref", "Country", "Bags", "kg/bag", "USD/kg");
            Row(sheet, 2, "A-1", "Rwanda", 10, 60, 7.5);
            Row(sheet, 3, "A-2", "", 12, 60, 7.6);
            sheet.Range("B2:B3").Merge();
        });

        var rows = Received.Read(file, "list.xlsx").Rows;

        Assert.Equal(["RW", "RW"], rows.Select(row => row.CountryCode));
    }

    [Fact]
    public void A_formula_is_never_evaluated()
    {
        var file = Workbook(book =>
        {
            var sheet = book.AddWorksheet("List");
            Row(sheet, 1, "Ref", "Bags", "kg/bag", "USD/kg");
            Row(sheet, 2, "A-1", 10, 60, 7.5);
            sheet.Cell("D2").FormulaA1 = "1+1";
        });

        var reading = Received.Read(WithStored(file, "1+1", "99"), "list.xlsx");

        // The sender's program stored 99; 2 would mean that somebody computed the formula.
        Assert.Equal(99m, Assert.Single(reading.Rows).Asking.Price!.Value.Amount);
    }

    [Fact]
    public void A_workbook_that_unpacks_too_far_is_refused_before_it_is_unpacked()
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var part = zip.CreateEntry("xl/workbook.xml", CompressionLevel.SmallestSize).Open();
            var zeros = new byte[1024 * 1024];
            for (var at = 0; at <= OfferWorkbook.LargestUnpacked / zeros.Length; at++)
            {
                part.Write(zeros);
            }
        }

        var refusal = Assert.Throws<RuleBrokenException>(() => OfferWorkbook.Read(stream.ToArray()));

        Assert.Contains("unpacks", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_workbook_with_a_broken_part_is_refused_in_a_sentence()
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            using var part = new StreamWriter(zip.CreateEntry("xl/workbook.xml").Open());
            part.Write("<!DOCTYPE x [<!ENTITY a \"aaaa\">]><workbook>&a;");
        }

        var refusal = Assert.Throws<RuleBrokenException>(() => OfferWorkbook.Read(stream.ToArray()).ToList());

        Assert.Equal("File", refusal.Field);
    }

    [Fact]
    public void The_same_list_read_again_changes_nothing()
    {
        var supplier = new Supplier("Loma Brava", SupplierKind.Exporter);
        var first = Received.Load(Andes(), "list.xlsx", supplier, []);
        var known = first.Accepted.Select(row => new KnownOffer(row.Offer, row.Lot)).ToList();

        var again = Received.Load(Andes(), "list.xlsx", supplier, known);

        Assert.Equal(3, first.Accepted.Count);
        Assert.Equal((0, 0, 3), (again.Accepted.Count, again.Revised.Count, again.Unchanged.Count));
    }

    /// <summary>The workbook with this value stored beside the formula.</summary>
    private static byte[] WithStored(byte[] file, string formula, string value)
    {
        using var stream = new MemoryStream();
        stream.Write(file);
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Update, leaveOpen: true))
        {
            var part = zip.Entries.First(entry => entry.FullName.Contains("sheet1.xml", StringComparison.Ordinal) && !entry.FullName.Contains("rels", StringComparison.Ordinal));
            using var content = part.Open();
            var text = new StreamReader(content, Encoding.UTF8).ReadToEnd();
            var stored = Regex.Replace(text, $"<(x:)?f>{Regex.Escape(formula)}</(x:)?f>(<(x:)?v>[^<]*</(x:)?v>|<(x:)?v ?/>)?", $"<$1f>{formula}</$1f><$1v>{value}</$1v>");
            content.SetLength(0);
            content.Write(Encoding.UTF8.GetBytes(stored));
        }

        return stream.ToArray();
    }

    private static byte[] Workbook(Action<XLWorkbook> write)
    {
        using var book = new XLWorkbook();
        write(book);
        using var stream = new MemoryStream();
        book.SaveAs(stream);
        return stream.ToArray();
    }

    private static void Row(IXLWorksheet sheet, int row, params object[] values)
    {
        for (var column = 0; column < values.Length; column++)
        {
            sheet.Cell(row, column + 1).Value = values[column] is string text && text.StartsWith('\'') ? text : values[column];
        }
    }
}
