using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Measures;
using PdfSharp.Drawing;

namespace GreenLedger.Documents.Stock;

/// <summary>A lot on the sheet, with what the ledger says where that is printed.</summary>
public sealed record SheetLine(string Ref, string Name, int BookBags, Weight Book);

/// <summary>A count to print: where and when, its lots, and whether the ledger's figures stand on the sheet.</summary>
/// <param name="Address">Where a phone goes on with the count.</param>
public sealed record CountOnPaper(string House, string Warehouse, DateOnly On, string Address, IReadOnlyList<SheetLine> Lines, bool WithBook);

/// <summary>The sheet of a stock count, to be filled in with a pen. Without the ledger's figures, so that whoever counts writes what is there.</summary>
public static class CountSheet
{
    public const string MediaType = "application/pdf";

    private const double CodeSide = 72;
    private const string ToFillIn = "\n\n";

    /// <summary>Lines for what lies there and is not on the list.</summary>
    private const int Spare = 3;

    public static void Write(CountOnPaper count, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(count);
        var paper = new Paper($"Stock count · {count.Warehouse}", count.House, $"{count.House} · stock count · {count.Warehouse} · {Printed.Day(count.On)}");
        paper.Text($"Stock count, {count.Warehouse}", TextStyle.Title);
        paper.Text($"{Printed.Day(count.On)} · {Printed.Count(count.Lines.Count, "lot", "lots")} by the ledger", TextStyle.Small);
        paper.Text("Bags of 60 to 70 kg are lifted with help or with a lift; keep out of the way of fork lifts. Local rules come first.", TextStyle.Body);
        paper.Text("Count every bag, weigh what is opened, write 0 where nothing is. What lies there and is not on the list goes on the empty lines.", TextStyle.Body);
        paper.Figure(CodeSide, "QR code of this count", (graphics, box) => QrCode.Fill(graphics, count.Address, new XRect(box.X - 8, box.Y, CodeSide, CodeSide)));
        paper.Text("The code opens this count on a phone; the label of a lot opens its line.", TextStyle.Small);
        paper.Gap(8);
        paper.Table(Columns(count.WithBook), [.. count.Lines.Select(line => Row(line, count.WithBook)), .. Enumerable.Repeat(Empty(count.WithBook), Spare)]);
        paper.Gap(16);
        paper.Table([new("Counted by", 2), new("On", 1), new("Signature", 2)], [[ToFillIn, ToFillIn, ToFillIn]]);
        paper.Save(stream);
    }

    private static PaperColumn[] Columns(bool withBook) => withBook
        ? [new("Lot", 3), new("Bags by the ledger", 1, IsNumber: true), new("kg by the ledger", 1.2, IsNumber: true), new("Bags counted", 1.2), new("kg weighed", 1.2), new("Why it differs", 2)]
        : [new("Lot", 3), new("Bags counted", 1.2), new("kg weighed", 1.2), new("Remarks", 2)];

    private static PaperCell[] Row(SheetLine line, bool withBook) => withBook
        ? [new PaperCell(line.Ref, line.Name), Printed.Count(line.BookBags), Printed.Amount(line.Book.Kilograms, 3), "", "", ""]
        : [new PaperCell(line.Ref, line.Name), "", "", ""];

    private static PaperCell[] Empty(bool withBook) => [ToFillIn, .. Enumerable.Repeat(new PaperCell(""), withBook ? 5 : 3)];
}
