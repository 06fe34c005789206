using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class ControlChartTests
{
    private static readonly double[] Flow = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

    [Fact]
    public void Single_values_have_the_published_limits()
    {
        var chart = ControlChart.Of(Flow)!;

        // NIST/SEMATECH handbook 6.3.2.2; handbook quality.md section 4.11, check value 23.
        AdditiveFitTests.Same([50.81, 55.8041, 45.8159], [chart.Mean, chart.Upper, chart.Lower], 4);
        Assert.Empty(chart.Outside);
        Assert.False(chart.IsFrozen);
    }

    [Fact]
    public void Limits_stay_once_the_base_period_is_full()
    {
        var chart = ControlChart.Of([.. Flow, 56.0, 45.0, 50.8], basePeriod: 10)!;

        Assert.True(chart.IsFrozen);
        AdditiveFitTests.Same([55.8041, 45.8159], [chart.Upper, chart.Lower], 4);
        Assert.Equal([10, 11], chart.Outside);
    }

    [Fact]
    public void Nine_values_are_too_few_for_limits()
    {
        Assert.Null(ControlChart.Of(Flow[..9]));
    }
}
