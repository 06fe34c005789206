using UglyToad.PdfPig;

namespace GreenLedger.Documents.Tests;

/// <summary>What a PDF says, read back by another library.</summary>
internal static class PdfText
{
    /// <summary>All words of all pages with one space between, in the order they were written.</summary>
    public static string Words(this PdfDocument pdf) =>
        string.Join(" ", pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text)).Replace('\u00A0', ' ');
}
