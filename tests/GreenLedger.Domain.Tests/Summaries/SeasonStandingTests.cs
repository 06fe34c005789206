using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Domain.Tests.Summaries;

/// <summary>A quarter among at least five other lots of three suppliers (issue 5); the boundaries are worked by hand.</summary>
public sealed class SeasonStandingTests
{
    private static readonly Id<Supplier>[] Sellers = [Id<Supplier>.New(), Id<Supplier>.New(), Id<Supplier>.New(), Id<Supplier>.New()];

    /// <summary>Eight others at 80 to 87: 6 of 8 below is the upper quarter, 4 the second, 2 the third; an equal one counts half.</summary>
    [Theory]
    [InlineData(88.00, SeasonQuarter.Upper)]
    [InlineData(85.50, SeasonQuarter.Upper)]
    [InlineData(85.00, SeasonQuarter.UpperMiddle)]
    [InlineData(83.50, SeasonQuarter.UpperMiddle)]
    [InlineData(83.00, SeasonQuarter.LowerMiddle)]
    [InlineData(81.50, SeasonQuarter.LowerMiddle)]
    [InlineData(81.00, SeasonQuarter.Lower)]
    [InlineData(79.00, SeasonQuarter.Lower)]
    public void A_score_stands_in_a_quarter_of_the_others(double own, SeasonQuarter expected) =>
        Assert.Equal(expected, SeasonStanding.Of(Score.Of((decimal)own), [.. Enumerable.Range(0, 8).Select(i => new SeasonLot(Sellers[i % 4], Score.Of(80m + i)))]));

    [Theory]
    [InlineData(4, 4)] // too few lots
    [InlineData(9, 2)] // too few suppliers: each could reckon the other's
    [InlineData(0, 1)]
    public void Among_too_few_others_nothing_is_said(int lots, int suppliers) =>
        Assert.Null(SeasonStanding.Of(Score.Of(85m), [.. Enumerable.Range(0, lots).Select(i => new SeasonLot(Sellers[i % suppliers], Score.Of(80m + i)))]));

    [Fact]
    public void The_house_may_ask_for_more_others_but_never_for_so_few_that_one_is_recognised()
    {
        var habits = new RecordHabits();
        habits.HoldBeside(24, 6, 4);

        Assert.Null(SeasonStanding.Of(Score.Of(85m), [.. Enumerable.Range(0, 6).Select(i => new SeasonLot(Sellers[i % 3], Score.Of(80m + i)))], habits));
        Assert.NotNull(SeasonStanding.Of(Score.Of(85m), [.. Enumerable.Range(0, 6).Select(i => new SeasonLot(Sellers[i % 4], Score.Of(80m + i)))], habits));
        Assert.Throws<RuleBrokenException>(() => habits.HoldBeside(12, 5, 2));
    }

    [Fact]
    public void Five_lots_of_three_suppliers_are_enough() =>
        Assert.NotNull(SeasonStanding.Of(Score.Of(85m), [.. Enumerable.Range(0, 5).Select(i => new SeasonLot(Sellers[i % 3], Score.Of(80m + i)))]));
}
