using CsCheck;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Trace;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Trace;

/// <summary>The lot of handbook trade.md section 8, example G: 275 bags, 18,975 kg shipped, 18,790 kg landed.</summary>
public sealed class MassBalanceTests
{
    private static readonly Gen<(int What, long Grams)> Act =
        from what in Gen.Int[0, 6]
        from grams in Gen.Long[1, 900_000]
        select (what, grams);

    private readonly ShortArrival _goods = new();
    private readonly Warehouse _quay = new("Quay store");
    private readonly Warehouse _mill = new("Mill Lane");
    private readonly List<Movement> _ledger = [];
    private readonly Holding _here;
    private readonly Holding _there;

    public MassBalanceTests() => (_here, _there) = (new Holding(_goods.Lot.Id, _quay.Id), new Holding(_goods.Lot.Id, _mill.Id));

    [Fact]
    public void Every_difference_has_its_name_and_the_steps_close()
    {
        Receive();
        Take(MovementKind.Release, 4, 273.325m);
        Take(MovementKind.SampleDrawn, 0, 1m);
        Take(MovementKind.Loss, 0, 0.005m);

        var balance = MassBalance.Of(_goods.Lot.Id, Facts());

        Assert.True(balance.Closes);
        Assert.Equal(["contracted", "shipped", "landed", "received into stock"], balance.Steps.Select(step => step.From));
        // Example G: 185 kg are lost on the way. The rest worked by hand: 18,790 − 273.325 − 1 − 0.005 = 18,515.67 kg.
        Assert.Equal([new BalancePart("lost between shipping and landing", Kg(185m))], balance.Steps[1].Parts);
        Assert.Equal([("released to roasting", Kg(273.325m)), ("drawn as samples", Kg(1m)), ("lost", Kg(0.005m))], balance.InStock!.Parts.Select(part => (part.What, part.Weight)));
        Assert.Equal(Kg(18_515.67m), balance.InStock.After);
    }

    [Fact]
    public void What_landed_and_is_not_in_stock_waits()
    {
        var balance = MassBalance.Of(_goods.Lot.Id, Facts());

        Assert.True(balance.Closes);
        Assert.Equal([new BalancePart("landed and not taken into stock yet", Kg(18_790m))], balance.Steps.Single(step => step.To == "received into stock").Parts);
    }

    /// <summary>A movement that the ledger lost: what lies there is less than the lines say, and no name is made up for it.</summary>
    [Fact]
    public void A_step_that_does_not_close_says_by_how_much()
    {
        Receive();
        Take(MovementKind.Release, 4, 273.325m);

        var balance = MassBalance.Of(_goods.Lot.Id, Facts() with { Movements = [_ledger[0]] });

        Assert.False(balance.Closes);
        Assert.Equal(Kg(273.325m), balance.InStock!.Unexplained);
    }

    /// <summary>Issue 6: mass balance closes, whatever moved, was taken back or carried to and fro.</summary>
    [Fact]
    public void Any_sequence_of_movements_closes() => Act.Array[0, 40].Sample(acts =>
    {
        var house = new MassBalanceTests();
        house.Receive();
        foreach (var (what, grams) in acts)
        {
            house.Do(what, Weight.FromGrams(grams));
        }

        var balance = MassBalance.Of(house._goods.Lot.Id, house.Facts());

        Assert.True(balance.Closes);
        Assert.Equal(house._ledger.Aggregate(Weight.Zero, (sum, one) => sum + one.Weighed), balance.InStock!.After);
    });

    [Fact]
    public void A_release_leads_back_to_bill_of_lading_contract_supplier_and_plots_and_they_lead_to_it()
    {
        Receive();
        Take(MovementKind.Release, 4, 273.325m);
        var producer = new Producer("Finca 1", ProducerKind.Farm, "CO");
        var plot = new Plot(producer.Id, "Lote 3", "CO", PlotShape.Point(-75.899m, 2.001m), 2.5m);
        var facts = Facts() with { Plots = [plot], GrownOn = [(_goods.Lot.Id, plot.Id)], Producers = [producer] };
        var release = new TraceKey(TraceKind.Release, _ledger[1].Id.Value);

        var back = facts.Graph().Backward([release]);
        var forth = facts.Graph().Forward([new TraceKey(TraceKind.Plot, plot.Id.Value)]);

        Assert.Equal([TraceKind.Plot, TraceKind.Lot, TraceKind.Contract, TraceKind.Shipment, TraceKind.Arrival, TraceKind.Warehouse, TraceKind.Release], back.Nodes.Select(node => node.Key.Kind));
        Assert.Equal("P26-001", back.Nodes.Single(node => node.Key.Kind == TraceKind.Contract).Name);
        Assert.Equal(Kg(273.325m), forth.Nodes.Single(node => node.Key == release).Weight);
    }

    private void Do(int what, Weight weight)
    {
        var (from, to) = weight.Micrograms % 2_000_000 == 0 ? (_here, _there) : (_there, _here);
        switch (what)
        {
            case 0 or 1 or 2 when from.Weighed > weight:
                Take(what == 0 ? MovementKind.Release : what == 1 ? MovementKind.Sale : MovementKind.Loss, 0, weight.Kilograms, from);
                break;
            case 3 when from.Weighed > weight:
                var (left, came) = from.Transfer(to, 0, weight, Days(from), Note(), _goods.Buyer.Id, ShortArrival.Now);
                _ledger.AddRange([left, came]);
                break;
            case 4 or 5:
                _ledger.Add(from.Add(what == 4 ? MovementKind.Return : MovementKind.Gain, new StockAmount(0, weight, weight), Note(), _goods.Buyer.Id, ShortArrival.Now));
                break;
            case 6 when _ledger[^1] is { Kind: MovementKind.Release or MovementKind.Loss } last:
                var holding = last.HoldingId == _here.Id ? _here : _there;
                _ledger.Add(holding.Reverse(last, false, Days(holding), Note(), _goods.Buyer.Id, ShortArrival.Now));
                break;
            default:
                break;
        }
    }

    private void Receive() => _ledger.Add(_here.Receive(_goods.Arrival, Note(), _goods.Buyer.Id, ShortArrival.Now));

    private void Take(MovementKind kind, int bags, decimal kilograms, Holding? from = null) =>
        _ledger.Add((from ?? _here).Take(kind, bags, Kg(kilograms), Days(from ?? _here), Note(), _goods.Buyer.Id, ShortArrival.Now));

    private RunningStock Days(Holding holding) => new(_ledger.Where(one => one.HoldingId == holding.Id).Select(one => (one.On, one.Amount)));

    private TraceFacts Facts() => new(
        [_goods.Lot], [], [], [], [], [_goods.Contract], [_goods.Shipment], [_goods.Arrival], _ledger, [_here, _there], [_quay, _mill], []);

    private static MovementNote Note() => new(ShortArrival.Received, "R-1", "Worked by hand");

    private static Weight Kg(decimal kilograms) => Weight.FromKilograms(kilograms);
}
