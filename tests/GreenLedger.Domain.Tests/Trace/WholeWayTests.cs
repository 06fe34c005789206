using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Trace;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Trace;

/// <summary>The way of the lot of handbook trade.md section 8, example G.</summary>
public sealed class WholeWayTests
{
    [Fact]
    public void What_happened_stands_in_its_order_with_how_it_turned_out()
    {
        var goods = new ShortArrival();
        var claim = goods.Open(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Weight]));

        var entries = Way(goods, claim).Entries();

        Assert.Equal([WayEntryKind.Contract, WayEntryKind.Shipment, WayEntryKind.Arrival, WayEntryKind.Stock, WayEntryKind.Claim], entries.Select(entry => entry.Kind));
        Assert.Equal("Contract P26-001 signed with Cerro Alto Exports: 275 bags, 18,975 kg", entries[0].What);
        // On board on 3 February, three days after the period; both verdicts are short; 639.09 USD by the example.
        Assert.Equal((WayOutcome.Bad, "3 days late"), (entries[1].Outcome, entries[1].Mark));
        Assert.Equal(("Received 275 bags, 18,790 kg of 18,975 kg shipped", "short in weight and quality"), (entries[2].What, entries[2].Mark));
        Assert.Equal("275 bags, 18,790 kg came into Quay warehouse", entries[3].What);
        Assert.Equal(("Claim C26-001: weight, 639.09 USD", WayOutcome.Open), (entries[4].What, entries[4].Outcome));
    }

    [Fact]
    public void A_settled_claim_tells_its_end_and_an_arrival_within_the_franchise_and_the_cup_matches()
    {
        var goods = new ShortArrival(Weight.FromKilograms(18_900m), arrivalMark: 8m, shipUntil: new DateOnly(2026, 2, 28)); // 75 kg are within the franchise: handbook, trade, check value 66
        var claimed = new ShortArrival();
        var claim = claimed.Open(new ClaimOrder(ShortArrival.Claimed, [ClaimGround.Weight]));
        claim.Settle(ClaimOutcome.Allowance, Money.Of(1600m, Currency.Usd), new DateOnly(2026, 4, 2), "As agreed.", claimed.Buyer.Id, ShortArrival.Now);

        var matching = Way(goods).Entries().Single(entry => entry.Kind == WayEntryKind.Arrival);
        var settled = Way(claimed, claim).Entries()[^1];

        Assert.Equal((WayOutcome.Good, "matches"), (matching.Outcome, matching.Mark));
        Assert.Equal(("Claim C26-001 settled: 1,600.00 USD", "allowance", new DateOnly(2026, 4, 2)), (settled.What, settled.Mark, settled.On));
    }

    private static WholeWay Way(ShortArrival goods, params Claim[] claims)
    {
        var basis = goods.Basis();
        var received = new Holding(goods.Lot.Id, Id<Warehouse>.New()).Receive(goods.Arrival, new MovementNote(ShortArrival.Received, null, null), goods.Buyer.Id, ShortArrival.Now);
        return new WholeWay(
            goods.Lot.Id, [], [goods.Contract], [goods.Shipment], [new JudgedArrival(goods.Arrival, basis.Weight, basis.Quality)], claims, [new StockedPart(received, "Quay warehouse")],
            moment => DateOnly.FromDateTime(moment.UtcDateTime));
    }
}
