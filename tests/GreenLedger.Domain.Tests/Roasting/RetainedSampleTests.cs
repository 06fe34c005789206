using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Roasting;

/// <summary>All grams worked by hand.</summary>
public sealed class RetainedSampleTests
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 20, 12, 0, 0, TimeSpan.Zero);

    private readonly Sample _sample = new(Id<Lot>.New(), SampleKind.Offer, "A1", new DateOnly(2026, 11, 18), Weight.FromGrams(350m));

    [Fact]
    public void What_came_less_what_was_roasted_is_left()
    {
        Assert.Equal(350m, RetainedSample.Left(_sample, [])?.Grams);
        Assert.Equal(130m, RetainedSample.Left(_sample, [Roasted(120m), Roasted(100m)])?.Grams);
        Assert.Equal(0m, RetainedSample.Left(_sample, [Roasted(200m), Roasted(200m)])?.Grams);
        Assert.Null(RetainedSample.Left(Sample.Ask(Id<Lot>.New(), SampleKind.Offer, "A2", null, Weight.FromGrams(300m), new DateOnly(2026, 11, 18), Id<Person>.New()), []));
    }

    [Fact]
    public void A_roast_that_was_withdrawn_or_is_of_another_sample_takes_nothing()
    {
        var withdrawn = Roasted(120m);
        withdrawn.Withdraw("Another sample's.", Id<Person>.New(), Noon);
        var other = new SampleRoast(new Sample(_sample.LotId, SampleKind.Offer, "A3", new DateOnly(2026, 11, 18), Weight.FromGrams(350m)), Noon, null, null).Weigh(Weight.FromGrams(90m), null);

        Assert.Equal(350m, RetainedSample.Left(_sample, [withdrawn, other])?.Grams);
    }

    [Fact]
    public void What_somebody_weighed_holds_and_later_roasts_are_taken_off_it()
    {
        _sample.WeighLeft(Weight.FromGrams(140m), "50 g went to the roastery.", Id<Person>.New(), Noon.AddHours(1));

        Assert.Equal(140m, RetainedSample.Left(_sample, [Roasted(120m)])?.Grams);
        Assert.Equal(40m, RetainedSample.Left(_sample, [Roasted(120m), Roasted(100m, Noon.AddHours(2))])?.Grams);
    }

    [Theory]
    [InlineData(351, "Given away.", "Between 0 g and the 350 g that came can be left")]
    [InlineData(-1, "Given away.", "Between 0 g and the 350 g that came can be left")]
    [InlineData(100, " ", "The reason is missing")]
    public void More_than_came_or_no_reason_is_refused_and_changes_nothing(int grams, string reason, string sentence)
    {
        var refused = Assert.Throws<RuleBrokenException>(() => _sample.WeighLeft(Weight.FromGrams(grams), reason, Id<Person>.New(), Noon));

        Assert.Contains(sentence, refused.Message, StringComparison.Ordinal);
        Assert.Null(_sample.Left);
    }

    private SampleRoast Roasted(decimal grams, DateTimeOffset? at = null) => new SampleRoast(_sample, at ?? Noon, null, null).Weigh(Weight.FromGrams(grams), null);
}
