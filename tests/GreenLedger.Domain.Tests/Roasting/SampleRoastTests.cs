using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Roasting;

/// <summary>Windows: handbook quality.md section 1.3, roast 8 to 12 min, rest 8 to 24 h, 58 whole bean and 63 ground, each ± 1.</summary>
public sealed class SampleRoastTests
{
    private static readonly DateTimeOffset Ended = new(2026, 11, 20, 15, 0, 0, TimeSpan.Zero);

    [Fact]
    public void The_loss_is_worked_out_from_both_masses()
    {
        // Handbook quality.md section 3: 100 g green at 15 % loss gives 85 g.
        var roast = New().Weigh(Weight.FromGrams(100m), Weight.FromGrams(85m));

        Assert.Equal(Percent.Of(15m), roast.Loss);
        Assert.Null(New().Weigh(Weight.FromGrams(100m), null).Loss);
    }

    [Theory]
    [InlineData(479, false)]
    [InlineData(480, true)]
    [InlineData(720, true)]
    [InlineData(721, false)]
    public void A_roast_takes_eight_to_twelve_minutes(int seconds, bool held) =>
        Assert.Equal(held, Finding(New().Time(seconds, null), "Roast time").Held);

    [Theory]
    [InlineData(7.9, false)]
    [InlineData(8.0, true)]
    [InlineData(24.0, true)]
    [InlineData(24.1, false)]
    public void It_rests_eight_to_twenty_four_hours(double hours, bool held) =>
        Assert.Equal(held, Finding(New().CupAt(Ended.AddHours(hours)), "Rest until cupping").Held);

    [Theory]
    [InlineData("57.0", "64.0", true, true)]
    [InlineData("59.1", "61.9", false, false)]
    public void Colour_may_differ_by_one(string whole, string ground, bool wholeHeld, bool groundHeld)
    {
        var roast = New().Read("gourmet", Reading(whole), Reading(ground));

        Assert.Equal((wholeHeld, groundHeld), (Finding(roast, "Colour, whole bean").Held, Finding(roast, "Colour, ground").Held));
    }

    /// <summary>Section 1.3: scales are not convertible by one factor, so that another scale says nothing about the window.</summary>
    [Fact]
    public void A_reading_on_another_scale_is_not_held_against_the_window()
    {
        var roast = New().Read("Commercial", null, Reading("48.0"));

        Assert.Null(Finding(roast, "Colour, ground").Held);
        Assert.Equal("48.0 (Commercial)", Finding(roast, "Colour, ground").Found);
    }

    [Fact]
    public void What_was_not_measured_passes_nothing_and_fails_nothing() =>
        Assert.All(RoastCheck.Of(New(), RoastWindows.Usual), finding => Assert.Null(finding.Held));

    [Fact]
    public void What_cannot_be_is_refused_with_its_field()
    {
        Assert.Equal("MassOut", Field(() => New().Weigh(Weight.FromGrams(100m), Weight.FromGrams(101m))));
        Assert.Equal("FirstCrack", Field(() => New().Time(600, 600)));
        Assert.Equal("ColourScale", Field(() => New().Read(" ", Reading("58"), null)));
        Assert.Equal("CuppingAt", Field(() => New().CupAt(Ended.AddMinutes(-1))));
        Assert.Equal("RoastedAt", Field(() => _ = new SampleRoast(Bag(), Ended.AddDays(-5), null, null)));
        var expected = Sample.Ask(Id<Lot>.New(), SampleKind.Offer, "QX8", null, Weight.FromGrams(500m), new DateOnly(2026, 11, 1), default);
        Assert.Equal("Label", Field(() => _ = new SampleRoast(expected, Ended, null, null)));
    }

    [Fact]
    public void A_window_that_ends_before_it_begins_is_refused() =>
        Assert.Equal("MostMinutes", Field(() => _ = new RoastProtocol(RoastWindows.Usual with { LeastMinutes = 12m, MostMinutes = 8m }, Ended)));

    [Fact]
    public void A_protocol_keeps_its_windows() =>
        Assert.Equal(RoastWindows.Usual, new RoastProtocol(RoastWindows.Usual, Ended).Windows);

    private static ColourReading Reading(string value) => ColourReading.Of(decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture));

    private static string? Field(Action act) => Assert.Throws<RuleBrokenException>(act).Field;

    private static RoastFinding Finding(SampleRoast roast, string what) => RoastCheck.Of(roast, RoastWindows.Usual).Single(finding => finding.What == what);

    private static Sample Bag() => new(Id<Lot>.New(), SampleKind.Offer, "QX7", new DateOnly(2026, 11, 18), Weight.FromGrams(350m));

    private static SampleRoast New() => new(Bag(), Ended, null, null);
}
