using GreenLedger.Domain.Choosing;

namespace GreenLedger.Domain.Tests.Choosing;

/// <summary>The running example of handbook quality.md section 5, in the order of section 9, value 27.</summary>
public sealed class ScatterChartTests
{
    [Fact]
    public void It_shows_every_ranked_lot_and_the_front_from_cheap_to_dear()
    {
        var chart = ScatterChart.Of(Demo.Ranked(Demo.RunningExample));

        Assert.Equal(["A", "E", "B", "C", "D"], chart.Points.Select(point => point.Ref));
        Assert.Equal([(6.90, 84.0), (7.60, 85.25), (8.80, 86.5), (11.50, 87.5)], chart.Front);
        Assert.Equal("Landed cost, USD/kg", chart.CostTitle);
    }

    [Fact]
    public void Each_process_has_a_shape_of_its_own()
    {
        var chart = ScatterChart.Of(Demo.Ranked([Demo.Lot("A", 85m, 8m), Demo.Lot("B", 86m, 8m), Demo.Lot("C", 86m, 9m).With(process: Demo.Natural)]));

        Assert.Equal([("washed", MarkShape.Circle), ("natural", MarkShape.Square)], chart.Series.Select(series => (series.Word, series.Shape)));
        Assert.Equal([0, 0, 1], chart.Points.OrderBy(point => point.Ref).Select(point => point.Series));
    }

    [Fact]
    public void A_long_list_is_drawn_by_its_best_and_its_front()
    {
        var lots = Enumerable.Range(0, 600).Select(i => Demo.Lot($"L{i:000}", 80m + i * 0.01m, 6m + i * 0.05m)).ToList();

        var chart = ScatterChart.Of(Demo.Ranked([.. lots, Demo.Lot("dominated", 79m, 36m)]));

        Assert.Equal(600, chart.Points.Count);
        Assert.Equal(1, chart.LeftOut);
    }
}
