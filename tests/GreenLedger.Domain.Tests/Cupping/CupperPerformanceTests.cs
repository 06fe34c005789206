using GreenLedger.Domain.Cupping;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class CupperPerformanceTests
{
    /// <summary>Handbook quality.md section 4.3: four cuppers, three samples, two replicates.</summary>
    internal const string Replicated =
        "84.00 84.50|82.50 83.00|85.25 85.00|83.75 84.25 / 86.00 85.75|84.25 84.50|87.50 87.00|84.75 85.50 / 83.25 83.00|82.75 82.25|84.00 84.75|82.00 83.00";

    /// <summary>Handbook quality.md section 4.4 and check value 14 (R).</summary>
    [Theory]
    [InlineData(0, 0.1944, 0.2500, 61.1667, 0.0037, 1.1024, 0.9969)]
    [InlineData(1, -1.4167, 0.3062, 22.1111, 0.0160, 0.7044, 0.9565)]
    [InlineData(2, 1.7500, 0.3819, 30.5000, 0.0101, 1.2116, 0.9887)]
    [InlineData(3, -0.5278, 0.5496, 11.4828, 0.0393, 0.9678, 0.9469)]
    public void Each_cupper_of_the_handbooks_panel_works_as_tabled(int cupper, double bias, double repeatability, double f, double p, double slope, double correlation)
    {
        var one = CupperPerformance.Of(Scores(Replicated)).Single(one => one.Cupper == cupper);

        AdditiveFitTests.Same(
            [bias, repeatability, f, p, slope, correlation],
            [one.Bias, one.Repeatability!.Value, one.Discrimination!.F, one.Discrimination.P, one.Slope, one.Correlation],
            4);
        Assert.Equal((2, 3), (one.Discrimination.BetweenFreedom, one.Discrimination.WithinFreedom));
    }

    [Fact]
    public void Without_repeats_nothing_is_said_about_repeatability_and_discrimination()
    {
        var panel = CupperPerformance.Of([new(0, 0, 84), new(0, 1, 85), new(1, 0, 82), new(1, 1, 82.5)]);

        Assert.All(panel, one => Assert.Null(one.Repeatability));
        Assert.All(panel, one => Assert.Null(one.Discrimination));
        // Worked by hand: means 83.00 and 83.75; own range 2 against 2.5 of the other.
        AdditiveFitTests.Same([-0.75, 0.8, 0.75, 1.25], [panel[0].Bias, panel[0].Slope, panel[1].Bias, panel[1].Slope], 12);
    }

    [Fact]
    public void Samples_that_not_everyone_cupped_count_for_nobody()
    {
        Assert.Empty(CupperPerformance.Of([new(0, 0, 84), new(0, 1, 85), new(1, 0, 82), new(2, 1, 82.5)]));
        Assert.Empty(CupperPerformance.Of([new(0, 0, 84), new(1, 0, 82)]));
    }

    [Fact]
    public void Instruments_of_certified_resistivity_differ_by_the_certified_ratio()
    {
        const string instruments =
            "196.3052 196.1240 196.1890 196.2569 196.3403|196.3042 196.3825 196.1669 196.3257 196.0422|196.1303 196.2005 196.2889 196.0343 196.1811|196.2795 196.1748 196.1494 196.1485 195.9885|196.2119 196.1051 196.1850 196.0052 196.2090";

        var table = OneWayTable.Of([.. instruments.Split('|').Select(Numbers)]);

        // NIST StRD, SiRstv, certified F; handbook quality.md section 4.9, check value 18: 1e-10 relative.
        Assert.InRange(table.F / 1.18046237440255, 1 - 1e-10, 1 + 1e-10);
        Assert.Equal(0.104076068334656, Math.Sqrt(table.WithinVariance), 12);
        Assert.Equal((4, 20), (table.BetweenFreedom, table.WithinFreedom));
    }

    [Fact]
    public void Groups_of_one_result_each_have_no_spread_to_be_held_against()
    {
        Assert.Throws<ArgumentException>(() => OneWayTable.Of([[84.0], [85.0]]));
        Assert.Throws<ArgumentException>(() => OneWayTable.Of([[84.0, 85.0]]));
    }

    internal static List<PanelScore> Scores(string table) =>
        [.. table.Split('/').SelectMany((sample, place) => sample.Split('|').SelectMany((cell, seat) => Numbers(cell).Select(points => new PanelScore(place, seat, points))))];

    private static IReadOnlyList<double> Numbers(string text) =>
        [.. text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(number => double.Parse(number, System.Globalization.CultureInfo.InvariantCulture))];
}
