using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Cupping.LayingOut;

namespace GreenLedger.Domain.Tests.Cupping.LayingOut;

public sealed class EstimableTests
{
    private static readonly ExpectedErrors House = new(1.00, 0.50);

    [Fact]
    public void A_full_table_can_answer_everything()
    {
        var all = Estimable.Of(new SessionLayout(10, 5, 5, 2, HasReference: true, Flights: 2, TiesFlights: true), House);

        Assert.Equal(7, all.Count);
        Assert.All(all, one => Assert.True(one.Can));
        // NIST/SEMATECH 1.3.6.7.4: chi-squared of 10 at 0.975 is 20.483, at 0.025 is 3.247; √(10 ÷ each) is 0.70 and 1.75.
        Assert.Contains("10 repeats: the panel's true repeatability then lies between 0.70 and 1.75 times", Reason(all, Question.Repeatability), StringComparison.Ordinal);
        // Handbook quality.md section 4.3: samples are tested against the interaction, (10 − 1) × (5 − 1).
        Assert.Contains("36 degrees of freedom", Reason(all, Question.OwnError), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Question.Repeatability, "No sample is poured twice")]
    [InlineData(Question.Discrimination, "nobody's own spread is known")]
    [InlineData(Question.Level, "No house reference is on the table")]
    public void Who_drops_duplicates_and_reference_is_told_what_is_lost(Question question, string says)
    {
        var all = Estimable.Of(new SessionLayout(8, 4, 5, 0, HasReference: false), House);

        Assert.False(all.Single(one => one.Question == question).Can);
        Assert.Contains(says, Reason(all, question), StringComparison.Ordinal);
        Assert.True(all.Single(one => one.Question == Question.Agreement).Can);
    }

    [Theory]
    [InlineData(Question.Agreement, "One cupper: there is nobody to agree with.")]
    [InlineData(Question.OwnError, "the house's reproducibility of 1.00 points")]
    public void A_cupper_alone_is_told_what_one_cannot_show(Question question, string says)
    {
        // With five duplicates one cupper has degrees of freedom, but none between cuppers.
        var all = Estimable.Of(new SessionLayout(5, 1, 5, 5, HasReference: true), House);

        Assert.False(all.Single(one => one.Question == question).Can);
        Assert.Contains(says, Reason(all, question), StringComparison.Ordinal);
        Assert.True(all.Single(one => one.Question == Question.Repeatability).Can);
    }

    [Fact]
    public void Flights_that_share_no_coffee_hide_their_drift()
    {
        var all = Estimable.Of(new SessionLayout(12, 4, 5, 2, HasReference: false, Flights: 2), House);

        Assert.False(all.Single(one => one.Question == Question.Drift).Can);
        Assert.DoesNotContain(Estimable.Of(new SessionLayout(6, 4, 5, 1, HasReference: false), House), one => one.Question == Question.Drift);
    }

    [Fact]
    public void One_sample_or_one_cup_is_said_too()
    {
        var all = Estimable.Of(new SessionLayout(1, 2, 1, 0, HasReference: false), House);

        Assert.Equal("One sample: whether cuppers rank alike cannot be seen.", Reason(all, Question.Agreement));
        Assert.False(all.Single(one => one.Question == Question.Uniformity).Can);
    }

    /// <summary>Our own rule, no source: one for each five samples begun.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(2, 1)]
    [InlineData(5, 1)]
    [InlineData(6, 2)]
    [InlineData(10, 2)]
    [InlineData(11, 3)]
    public void Duplicates_are_proposed_for_each_five_samples_begun(int samples, int duplicates)
    {
        Assert.Equal(duplicates, HiddenDuplicates.Proposed(samples));
    }

    [Fact]
    public void Which_samples_are_poured_twice_is_left_to_chance()
    {
        var chosen = Enumerable.Range(0, 200).Select(seed => HiddenDuplicates.Choose(6, 2, new Random(seed))).ToList();

        Assert.All(chosen, samples => Assert.Equal(2, samples.Distinct().Count()));
        // Worked by hand: 6 samples have 15 pairs.
        Assert.Equal(15, chosen.Select(samples => string.Join(' ', samples)).Distinct().Count());
        Assert.Throws<RuleBrokenException>(() => HiddenDuplicates.Choose(2, 3, new Random(1)));
    }

    private static string Reason(IReadOnlyList<Estimable> all, Question question) => all.Single(one => one.Question == question).Reason;
}
