using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Trace;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Trace;

/// <summary>The lot of handbook trade.md section 8, example G: 18,790 kg landed.</summary>
public sealed class RecallTests
{
    private readonly ShortArrival _goods = new();
    private readonly Warehouse _quay = new("Quay store");
    private readonly List<Movement> _ledger = [];
    private readonly Holding _here;

    public RecallTests()
    {
        _here = new Holding(_goods.Lot.Id, _quay.Id);
        _ledger.Add(_here.Receive(_goods.Arrival, Note("WR-1"), _goods.Buyer.Id, ShortArrival.Now));
    }

    [Fact]
    public void All_that_was_received_is_found_by_where_it_is()
    {
        Take(MovementKind.Release, 1_879m);
        Take(MovementKind.Sale, 939.5m);

        var found = RecallFindings.Of(Facts(), [new TraceKey(TraceKind.Lot, _goods.Lot.Id.Value)]);

        // Worked by hand: a tenth of 18,790 kg is 1,879 and a twentieth 939.5, so that 85 % are left.
        Assert.Equal((Kg(18_790m), Percent.Of(100m)), (found.Received, found.Found));
        Assert.Equal([("in the warehouses", 85m), ("release to roasting", 10m), ("sale", 5m)], found.Shares.Select(share => (share.What, share.Share.Points)));
        Assert.Equal(["R-1", "R-1"], found.Lines.Where(line => line.Kind.IsGone()).Select(line => line.Detail));
    }

    [Fact]
    public void What_the_ledger_lost_is_said_not_to_be_found()
    {
        Take(MovementKind.Release, 1_879m);

        var found = RecallFindings.Of(Facts() with { Movements = [_ledger[0]] }, [new TraceKey(TraceKind.Lot, _goods.Lot.Id.Value)]);

        Assert.Equal(Percent.Of(90m), found.Found);
        Assert.Equal((Kg(1_879m), Percent.Of(10m)), found.Shares.Where(share => share.What == RecallFindings.NotFound).Select(share => (share.Weight, share.Share)).Single());
    }

    [Fact]
    public void What_is_on_the_way_is_found_though_nothing_was_received()
    {
        var found = RecallFindings.Of(Facts() with { Arrivals = [], Movements = [], Holdings = [] }, [new TraceKey(TraceKind.Shipment, _goods.Shipment.Lots[0].Id.Value)]);

        Assert.Equal((TraceKind.Shipment, Kg(18_975m)), found.Lines.Select(line => (line.Kind, line.Weight)).Single());
        Assert.Equal(Weight.Zero, found.Received);
    }

    [Fact]
    public void A_recall_that_has_ended_stays_as_it_is()
    {
        var recall = new MockRecall("M26-001", TraceFrom.Lot, _goods.Lot.Id.Value, "CA-17, Cerro Alto", "Yearly exercise", _goods.Buyer.Id, ShortArrival.Now);
        var found = RecallFindings.Of(Facts(), [new TraceKey(TraceKind.Lot, _goods.Lot.Id.Value)]);

        recall.End(found, " Quick. ", _goods.Buyer.Id, ShortArrival.Now.AddMinutes(12));

        Assert.Equal((TimeSpan.FromMinutes(12), "Quick."), (recall.Took, recall.Learned));
        Assert.Contains("hold another one", Assert.Throws<RuleBrokenException>(() => recall.End(found, null, _goods.Buyer.Id, ShortArrival.Now.AddMinutes(13))).Message, StringComparison.Ordinal);
        Assert.Throws<RuleBrokenException>(() => new MockRecall("M26-002", TraceFrom.Lot, _goods.Lot.Id.Value, "CA-17", " ", _goods.Buyer.Id, ShortArrival.Now));
    }

    private void Take(MovementKind kind, decimal kilograms) =>
        _ledger.Add(_here.Take(kind, 1, Kg(kilograms), new RunningStock(_ledger.Select(one => (one.On, one.Amount))), Note("R-1"), _goods.Buyer.Id, ShortArrival.Now));

    private TraceFacts Facts() => new([_goods.Lot], [], [], [], [], [_goods.Contract], [_goods.Shipment], [_goods.Arrival], _ledger, [_here], [_quay], []);

    private static MovementNote Note(string document) => new(ShortArrival.Received, document, null);

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);
}
