using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class WaterActivityTests
{
    [Fact]
    public void Keeps_the_promises_of_a_measure() =>
        MeasureContract.Holds(WaterActivity.Of(0.45m), WaterActivity.Of(0.58m), WaterActivity.Of(0.7m));

    [Fact]
    public void Fifty_eight_is_not_a_water_activity() =>
        Assert.Throws<RuleBrokenException>(() => WaterActivity.Of(58m));
}
