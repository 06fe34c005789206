using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class MarkTests
{
    [Fact]
    public void Keeps_the_promises_of_a_measure() =>
        MeasureContract.Holds(Mark.Of(0m), Mark.Of(7.75m), Mark.Of(8m), Mark.Of(8.33m), Mark.Of(100m));

    [Fact]
    public void Text_that_is_no_mark_is_not_read() =>
        MeasureContract.IsNotRead<Mark>(null, "", "-1", "8.333", "100.01", "8,25", "good");

    [Fact] // the issue: a sheet's marks are exact hundredths
    public void A_mark_is_exact_hundredths()
    {
        Assert.Equal(825, Mark.Of(8.25m).Hundredths);
        Assert.Equal(833, Mark.Of(8.33m).Hundredths);
    }

    [Theory]
    [InlineData(-0.25)]
    [InlineData(100.25)]
    [InlineData(8.125)]
    public void A_mark_outside_the_forms_or_finer_than_hundredths_is_refused(double points) =>
        Assert.Throws<RuleBrokenException>(() => Mark.Of((decimal)points));
}
