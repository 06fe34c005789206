using GreenLedger.Documents.Choosing;

namespace GreenLedger.Documents.Tests.Choosing;

public sealed class ChartAxisTests
{
    /// <summary>Worked by hand: 6.90 to 11.50 is 4.6 wide, with 6 % of room at both ends 5.152; a seventh is 0.736, the next round step 1.</summary>
    [Fact]
    public void Ticks_stand_at_round_figures()
    {
        var axis = new ChartAxis(6.9, 11.5, 7);

        var figures = axis.Ticks.Select(axis.Figure);

        Assert.Equal(["7", "8", "9", "10", "11"], figures);
    }

    [Fact]
    public void Values_lie_within_the_axis()
    {
        var axis = new ChartAxis(84, 87.5, 6);

        Assert.InRange(axis.Place(84), 0.01, 0.2);
        Assert.InRange(axis.Place(87.5), 0.8, 0.99);
    }

    [Theory]
    [InlineData(86.5)]
    [InlineData(0)]
    public void One_value_alone_has_an_axis_too(double value)
    {
        var axis = new ChartAxis(value, value, 6);

        Assert.InRange(axis.Place(value), 0, 1);
        Assert.InRange(axis.Ticks.Count(), 2, 12);
    }
}
