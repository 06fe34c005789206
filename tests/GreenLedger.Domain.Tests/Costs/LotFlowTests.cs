using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Tests.Contracts;

namespace GreenLedger.Domain.Tests.Costs;

public sealed class LotFlowTests
{
    private static readonly DateOnly Day = new(2026, 3, 2);

    /// <summary>3,000 kg landed, 900 kg released ten days later and 300 kg sold after twenty.</summary>
    private static readonly LotFlow Flow = new([On(0, 3_000m)], [On(10, 900m), On(20, 300m)]);

    [Theory]
    [InlineData(9, 0.00)]
    [InlineData(10, 30.00)]
    [InlineData(20, 40.00)]
    public void A_bill_falls_late_on_what_was_gone_by_its_day(int day, decimal late)
    {
        // Handbook, trade 9.2: late costs re-value what is on hand, the share of issued kilograms is variance. Worked by hand: 900 and 1,200 of 3,000 kg.
        Assert.Equal(Eur(late), Flow.LateOf(Eur(100m), Day.AddDays(day)));
        Assert.Equal(-Eur(late), Flow.LateOf(Eur(-100m), Day.AddDays(day)));
    }

    [Fact]
    public void All_of_a_bill_stays_while_nothing_landed_or_nothing_is_gone()
    {
        Assert.Equal(Eur(0m), LotFlow.None.LateOf(Eur(100m), Day));
        Assert.Equal(Eur(0m), Flow.LateOf(Eur(100m), Day.AddDays(-30)));
    }

    [Fact]
    public void What_is_still_to_come_bears_its_part()
    {
        var flow = new LotFlow([On(0, 1_000m), On(60, 2_000m)], [On(10, 1_000m)]);

        // Worked by hand, handbook, trade 9.2: a third is gone, two thirds come later; the cent left over goes to the larger remainder.
        Assert.Equal(Eur(33.34m), flow.LateOf(Eur(100.01m), Day.AddDays(30)));
    }

    [Fact]
    public void What_came_back_before_the_bill_is_not_gone()
    {
        var flow = Flow with { Gone = [.. Flow.Gone, On(25, -300m)] };

        // Worked by hand, handbook, trade 9.2: 900 of 3,000 kg.
        Assert.Equal(Eur(30m), flow.LateOf(Eur(100m), Day.AddDays(25)));
    }

    [Fact]
    public void No_more_than_landed_is_ever_gone()
    {
        var flow = new LotFlow([On(0, 1_000m)], [On(10, 1_020m)]);

        // A count had found 20 kg that no paper knows and that cost nothing: the whole bill is late, not more.
        Assert.Equal(Eur(100m), flow.LateOf(Eur(100m), Day.AddDays(10)));
    }

    [Fact]
    public void What_left_after_the_bill_took_its_part_along()
    {
        var part = CostPart.Of(Bill(CostStage.Freight, Day.AddDays(15), null), Eur(100m), Flow);

        // Worked by hand, handbook, trade 9.2: of 3,000 kg 900 were gone, 300 left after the bill and 1,800 are there.
        Assert.Equal((Eur(30m), Eur(10m), Eur(70m)), (part.LateAccounting, part.Issued, part.Staying));
    }

    [Theory]
    [InlineData(CostStage.Freight, 100.00)]
    [InlineData(CostStage.Finance, 0.00)]
    [InlineData(CostStage.Storage, 33.33)]
    public void Storage_is_accounting_cost_for_the_days_before_the_lot_landed(CostStage stage, decimal accounting)
    {
        var covers = stage == CostStage.Storage ? new CoveredDays(Day.AddDays(-10), Day.AddDays(19)) : null;

        // IAS 2.16 and IAS 23 (from memory), handbook, trade 3.3. Worked by hand: 10 of 30 days lie before the day it landed.
        Assert.Equal(Eur(accounting), Flow.AccountingOf(Eur(100m), Bill(stage, Day.AddDays(30), covers)));
    }

    [Fact]
    public void Each_kilogram_counts_the_days_before_it_landed_itself()
    {
        var flow = new LotFlow([On(0, 1_000m), On(10, 2_000m)], []);
        var bill = Bill(CostStage.Storage, Day.AddDays(30), new CoveredDays(Day.AddDays(-10), Day.AddDays(19)));

        // Worked by hand: 1,000 kg for 10 days and 2,000 kg for 20 days are 50,000 of 90,000.
        Assert.Equal(Eur(55.56m), flow.AccountingOf(Eur(100m), bill));
    }

    [Theory]
    [InlineData(-1, 100.00)]
    [InlineData(0, 0.00)]
    public void Without_days_the_day_of_the_bill_decides(int day, decimal accounting) =>
        Assert.Equal(Eur(accounting), Flow.AccountingOf(Eur(100m), Bill(CostStage.Storage, Day.AddDays(day), null)));

    [Fact]
    public void Storage_of_a_lot_that_never_landed_here_was_before()
        => Assert.Equal(Eur(100m), LotFlow.None.AccountingOf(Eur(100m), Bill(CostStage.Storage, Day, null)));

    [Fact]
    public void Days_are_billed_for_storage_only_and_in_order()
    {
        Assert.Null(CoveredDays.Of(null, null));
        Assert.StartsWith("Give the last day", ContractDemo.Refusal(() => CoveredDays.Of(Day, null)), StringComparison.Ordinal);
        Assert.StartsWith("Give the first day", ContractDemo.Refusal(() => CoveredDays.Of(null, Day)), StringComparison.Ordinal);
        Assert.StartsWith("The last day", ContractDemo.Refusal(() => CoveredDays.Of(Day, Day.AddDays(-1))), StringComparison.Ordinal);
        Assert.StartsWith("Only storage", ContractDemo.Refusal(() => Bill(CostStage.Freight, Day, new CoveredDays(Day, Day))), StringComparison.Ordinal);
    }

    [Fact]
    public void Whatever_moves_late_parts_only_grow_and_stay_within_the_bill()
    {
        var chance = new Random(11);
        for (var round = 0; round < 200; round++)
        {
            var landed = Enumerable.Range(0, chance.Next(1, 4)).Select(_ => On(chance.Next(0, 40), chance.Next(1, 90_000) / 10m)).ToList();
            var gone = Enumerable.Range(0, chance.Next(0, 9)).Select(_ => On(chance.Next(0, 80), chance.Next(1, 20_000) / 10m)).ToList();
            var (flow, part) = (new LotFlow(landed, gone), Eur(chance.Next(1, 900_000) / 100m));

            var late = Enumerable.Range(0, 90).Select(day => flow.LateOf(part, Day.AddDays(day))).ToList();

            Assert.Equal(late.Order(), late);
            Assert.InRange(late[^1].MinorUnits, 0, part.MinorUnits);
        }
    }

    private static CostPosting Bill(CostStage stage, DateOnly on, CoveredDays? covers) => new(
        new PostedOn(null, null, Id<Lot>.New()),
        new Invoice(stage, Eur(100m), new Conversion(Currency.Eur, Currency.Eur, null, null), on, "ST-1", "Quay store", ShareBasis.Weight, covers),
        Currency.Eur,
        Id<Person>.New(),
        new DateTimeOffset(2026, 11, 26, 12, 0, 0, TimeSpan.Zero));

    private static WeightOn On(int day, decimal kilograms) => new(Day.AddDays(day), Weight.FromKilograms(kilograms));

    private static Money Eur(decimal amount) => Money.Of(amount, Currency.Eur);
}
