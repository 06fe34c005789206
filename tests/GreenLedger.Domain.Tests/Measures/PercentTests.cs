using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class PercentTests
{
    [Fact]
    public void Keeps_the_promises_of_a_measure() =>
        MeasureContract.Holds(Percent.Of(-3m), default, Percent.Of(0.0001m), Percent.Of(0.35m), Percent.Of(10.8m), Percent.Of(110m));

    [Fact]
    public void Text_that_is_no_percentage_is_not_read() =>
        MeasureContract.IsNotRead<Percent>(null, "", "%", "ten", "0,35 %", "1001 %");

    [Fact] // worked by hand: 10.8 % = 0.108
    public void A_percentage_is_a_fraction_of_one()
    {
        Assert.Equal(108_000, Percent.Of(10.8m).TenThousandths);
        Assert.Equal(0.108m, Percent.Of(10.8m).Fraction);
    }

    [Fact]
    public void A_percentage_out_of_all_range_is_refused() =>
        Assert.Throws<RuleBrokenException>(() => Percent.Of(1000.5m));
}
