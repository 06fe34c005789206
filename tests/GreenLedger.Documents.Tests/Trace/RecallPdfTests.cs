using GreenLedger.Documents.Trace;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Trace;
using GreenLedger.Examples;
using UglyToad.PdfPig;

namespace GreenLedger.Documents.Tests.Trace;

public sealed class RecallPdfTests
{
    [Fact]
    public void The_report_says_who_held_it_how_long_it_took_and_what_was_found()
    {
        var goods = new ShortArrival();
        var store = new Warehouse("Quay store");
        var holding = new Holding(goods.Lot.Id, store.Id);
        var received = holding.Receive(goods.Arrival, new MovementNote(ShortArrival.Received, "WR-1", null), goods.Buyer.Id, ShortArrival.Now);
        var facts = new TraceFacts([goods.Lot], [], [], [], [], [goods.Contract], [goods.Shipment], [goods.Arrival], [received], [holding], [store], []);
        var findings = RecallFindings.Of(facts, [new TraceKey(TraceKind.Lot, goods.Lot.Id.Value)]);
        var recall = new MockRecall("M26-001", TraceFrom.Lot, goods.Lot.Id.Value, "Cerro Alto", "Yearly exercise", goods.Buyer.Id, ShortArrival.Now);
        recall.End(findings, "All found", goods.Buyer.Id, ShortArrival.Now.AddMinutes(12).AddSeconds(5));
        using var stream = new MemoryStream();

        RecallPdf.Write(new RecallReport("Sorrel Roasters", ClockZone.Utc, recall, findings, "Wanda", "Tobias"), stream);

        using var pdf = PdfDocument.Open(stream.ToArray());
        var text = string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
        // Example G of the handbook, trade 8: 18,790 kg landed, and all of it lies in the store.
        Assert.All(["M26-001", "by Wanda", "12 min 5 s", "18,790 kg received into stock", "100 %", "warehouse Quay store", "All found", "food authority"], said => Assert.Contains(said, text, StringComparison.Ordinal));
    }

    [Fact]
    public void How_long_it_took_is_told_in_hours_or_minutes()
    {
        Assert.Equal("2 h 5 min", RecallPdf.Took(new TimeSpan(2, 5, 40)));
        Assert.Equal("26 h 0 min", RecallPdf.Took(TimeSpan.FromHours(26)));
        Assert.Equal("0 min 9 s", RecallPdf.Took(TimeSpan.FromSeconds(9)));
    }
}
