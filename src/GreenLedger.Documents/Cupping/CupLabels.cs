using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Samples;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace GreenLedger.Documents.Cupping;

/// <summary>A label for every cup of a table: the blind code in large letters, which cup it is, and the flight.</summary>
public static class CupLabels
{
    public const string MediaType = "application/pdf";

    /// <param name="from">The first place to print on, from 1; the places before it are used already.</param>
    /// <exception cref="RuleBrokenException">There is nothing to print, or no such place on the sheet.</exception>
    public static void Write(LabelSheet sheet, TableOnPaper table, int from, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(table);
        var cups = table.Flights.SelectMany(flight => flight.Codes, (flight, code) => (Flight: flight.Number, Code: code))
            .SelectMany(_ => Enumerable.Range(1, table.CupsPerSample), (one, cup) => (one.Code, Below: Below(table, one.Flight, cup))).ToList();
        LabelPages.Write(sheet, cups, from, $"Cup labels · {table.Title}", table.House, stream, (stage, cup, box) => Draw(stage, cup.Code, cup.Below, box));
    }

    private static string Below(TableOnPaper table, int flight, int cup) =>
        $"cup {cup} of {table.CupsPerSample}{(table.Flights.Count > 1 ? $" · flight {flight}" : "")}{(table.IsByPlace ? " · under the bowl" : "")}";

    private static void Draw(Stage stage, string code, string below, XRect box)
    {
        var size = Math.Min(box.Height * 0.5, box.Width / (code.Length * 0.75));
        var small = Faces.Regular(Math.Clamp(box.Height * 0.12, 7, 11));
        var middle = box.Y + box.Height / 2 + size * 0.22;
        Middle(stage, code, Faces.Bold(size), Ink.Dark, box, middle);
        Middle(stage, LabelPages.Fitting(stage.Graphics, below, small, box.Width - LabelPages.Points(3)), small, Ink.Soft, box, middle + small.Size * 1.5);
    }

    private static void Middle(Stage stage, string text, XFont font, XColor colour, XRect box, double baseline) =>
        stage.Element(PdfBlockLevelElementTag.Paragraph, () => stage.Graphics.DrawString(
            text, font, colour.Brush(), box.X + (box.Width - stage.Graphics.MeasureString(text, font).Width) / 2, baseline));
}
