using GreenLedger.Documents.Samples;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using UglyToad.PdfPig;

namespace GreenLedger.Documents.Tests.Samples;

public sealed class RequestLetterTests
{
    private static readonly SampleRequest English = new(
        "Harbour & Hill Roasters", "Serrado Azul Exportadora", null, new DateOnly(2026, 11, 2), "Ana Ruiz",
        [
            new("SAE26-092", "Fazenda Três Veredas", SampleKind.Offer, Weight.FromGrams(500m), "ACDEF"),
            new("SAE26-094", "Monte Aplomado", SampleKind.PreShipment, Weight.FromGrams(1000m), "GHJKM"),
        ]);

    [Fact]
    public void It_names_each_lot_with_its_weight_and_the_code_for_its_bag()
    {
        var text = Printed(English);

        Assert.Contains("Dear Serrado Azul Exportadora,", text, StringComparison.Ordinal);
        Assert.Contains("2 November 2026", text, StringComparison.Ordinal);
        Assert.Contains("Fazenda Três Veredas · SAE26-092 offer 500 ACDEF", text, StringComparison.Ordinal);
        Assert.Contains("Monte Aplomado · SAE26-094 pre-shipment 1,000 GHJKM", text, StringComparison.Ordinal);
        Assert.Contains("Ana Ruiz Harbour & Hill Roasters", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("es", "Solicitud de muestras", "de preembarque", "2 noviembre 2026", "página 1 de 1")]
    [InlineData("pt", "Pedido de amostras", "de pré-embarque", "2 novembro 2026", "página 1 de 1")]
    [InlineData("fr", "Demande d’échantillons", "avant embarquement", "2 novembre 2026", "page 1 sur 1")]
    [InlineData("xx", "Request for samples", "pre-shipment", "2 November 2026", "page 1 of 1")]
    public void It_is_in_the_suppliers_language_or_else_in_English(string language, string title, string kind, string day, string number)
    {
        var text = Printed(English with { Language = language });

        Assert.Contains(title, text, StringComparison.Ordinal);
        Assert.Contains(kind, text, StringComparison.Ordinal);
        Assert.Contains(day, text, StringComparison.Ordinal);
        Assert.EndsWith(number, text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_text_to_copy_says_the_same()
    {
        var text = RequestLetter.Text(English);

        Assert.Contains("- Monte Aplomado · SAE26-094 · pre-shipment · 1,000 g · Code for the bag: GHJKM", text, StringComparison.Ordinal);
        Assert.Contains("Dear Serrado Azul Exportadora,", text, StringComparison.Ordinal);
        Assert.EndsWith("Kind regards\nAna Ruiz\nHarbour & Hill Roasters\n", text, StringComparison.Ordinal);
        Assert.StartsWith("Dear Sir or Madam,", RequestLetter.Text(English with { Supplier = null }), StringComparison.Ordinal);
    }

    private static string Printed(SampleRequest request)
    {
        using var stream = new MemoryStream();
        RequestLetter.Write(request, stream);
        using var pdf = PdfDocument.Open(stream.ToArray());
        return pdf.Words();
    }
}
