using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Tests.Contracts;
using GreenLedger.Domain.Tests.Shipments;

namespace GreenLedger.Domain.Tests.Arrivals;

/// <summary>100 bags of 69 kg fixed by weight, and 1,250 of them in five lots of 37,500 lb (handbook, trade 2.1).</summary>
public sealed class FixingGapTests
{
    private static readonly DateOnly OnBoard = new(2027, 3, 3);

    [Theory] // worked by hand: 4,000 and 100 kg of 37,500 × 0.45359237 = 17,009.713875 kg a lot
    [InlineData(2_900, 6_900, "Under-fixed by 4,000 kg, 0.2352 lots of KC: 2,900 kg are fixed, 6,900 kg were shipped.")]
    [InlineData(6_900, 6_800, "Over-fixed by 100 kg, 0.0059 lots of KC: 6,900 kg are fixed, 6,800 kg were shipped.")]
    public void What_was_shipped_shows_too_little_or_too_much_fixed(int kilograms, int shipped, string sentence)
    {
        var contract = ByWeight(kilograms);

        var gap = FixingGap.Between(contract, Progress(contract, ShipmentTests.Loaded(contract, 100, shipped, OnBoard)), [], null)!;

        Assert.Equal(sentence, gap.Sentence);
        Assert.True(gap.IsFlagged);
    }

    [Fact]
    public void Before_shipment_only_the_last_day_shows_what_is_missing()
    {
        var contract = ByWeight(2_900);
        var calendar = new ExchangeCalendar([], new FixingHabits());

        var (before, after) = (FixingTask.Of(contract, calendar, ContractDemo.Today), FixingTask.Of(contract, calendar, new DateOnly(2027, 6, 1)));

        Assert.Null(FixingGap.Between(contract, Progress(contract), [], before));
        Assert.StartsWith("Under-fixed by 4,000 kg", FixingGap.Between(contract, Progress(contract), [], after)!.Sentence, StringComparison.Ordinal);
    }

    [Theory] // worked by hand: 86,250 − 3 × 17,009.713875 = 35,220.858375 kg, and less two lots more 1,201.430625 kg
    [InlineData(3, 35_220.858375, true)]
    [InlineData(5, 1_201.430625, false)]
    public void Whole_lots_come_no_closer_than_a_lot(int lots, double under, bool isFlagged)
    {
        var contract = ContractDemo.Signed();
        contract.Fix(lots, 285.40m);

        var gap = FixingGap.Between(contract, Progress(contract, ShipmentTests.Loaded(contract, 1_250, 86_250m, OnBoard)), [], null)!;

        Assert.Equal(((decimal)under, isFlagged), (gap.Under.Kilograms, gap.IsFlagged));
    }

    private static Contract ByWeight(int kilograms)
    {
        var contract = ContractDemo.Signed(ContractDemo.ToBeFixed(lots: null), bags: 100);
        contract.Fix(new FixingOrder(ContractDemo.Today, null, Weight.FromKilograms(kilograms), 285.40m, null), ContractDemo.Buyer, ContractDemo.Now);
        return contract;
    }

    private static ContractProgress Progress(Contract contract, params Shipment[] shipments) => ContractProgress.Of(contract, shipments, new HashSet<Id<ShipmentLot>>());
}
