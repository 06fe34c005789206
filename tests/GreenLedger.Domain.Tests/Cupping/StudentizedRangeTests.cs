using GreenLedger.Domain.Cupping;
using MathNet.Numerics.Distributions;

namespace GreenLedger.Domain.Tests.Cupping;

public sealed class StudentizedRangeTests
{
    /// <summary>Handbook quality.md section 4.7 and check value 24 (R qtukey, SciPy): three or four decimals.</summary>
    [Theory]
    [InlineData(3, 6, 4.3392, 4)]
    [InlineData(3, 10, 3.877, 3)]
    [InlineData(4, 20, 3.958, 3)]
    [InlineData(5, 20, 4.232, 3)]
    [InlineData(2, double.PositiveInfinity, 2.772, 3)]
    [InlineData(3, double.PositiveInfinity, 3.314, 3)]
    [InlineData(4, 60, 3.737, 3)]
    [InlineData(6, 120, 4.096, 3)]
    public void Five_in_a_hundred_exceed_the_tabled_values(int means, double freedom, double tabled, int decimals)
    {
        Assert.Equal(tabled, StudentizedRange.Quantile(0.05, means, freedom), decimals);
    }

    [Fact]
    public void Tails_are_those_of_R()
    {
        // tests/R/telling-apart.R: R 4.2, both integrals by its adaptive integrate (its ptukey keeps six decimals).
        Assert.All(Recorded.Rows("studentized-range.csv"), row =>
        {
            var freedom = row["df"] == "inf" ? double.PositiveInfinity : row.Number("df");
            Assert.Equal(row.Number("tail"), StudentizedRange.UpperTail(row.Number("q"), row.Whole("means"), freedom), 1e-8);
        });
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(7)]
    [InlineData(46)]
    [InlineData(400)]
    public void The_range_of_two_means_is_Students_t(int freedom)
    {
        // The range of two is their difference: q = √2 |t|, so the tail is two-sided.
        foreach (var t in new[] { 0.1, 0.7, 1.5, 2.4, 4.0, 9.0 })
        {
            Assert.Equal(2 * StudentT.CDF(0, 1, freedom, -t), StudentizedRange.UpperTail(Math.Sqrt(2) * t, 2, freedom), 1e-9);
        }
    }

    [Fact]
    public void Nothing_lies_below_zero_and_nothing_is_said_of_one_mean()
    {
        Assert.Equal(1, StudentizedRange.UpperTail(0, 3, 10));
        Assert.True(double.IsNaN(StudentizedRange.UpperTail(double.NaN, 3, 10)));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.UpperTail(3, 1, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentizedRange.Quantile(0, 3, 10));
    }
}
