using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Samples;

/// <summary>The steps and their order: handbook quality.md section 3, the samples' state machine.</summary>
public sealed class SampleWayTests
{
    private static readonly DateOnly Day = new(2026, 11, 10);

    [Fact]
    public void A_step_that_a_later_one_passed_is_shown_as_skipped()
    {
        var way = Way([(SampleStep.Received, 0), (SampleStep.Cupped, 4)], today: 5);

        Assert.Equal(
            [StepState.Skipped, StepState.Skipped, StepState.Done, StepState.Skipped, StepState.Skipped, StepState.Done, StepState.Next],
            way.Select(stop => stop.State));
    }

    [Fact]
    public void The_step_after_the_last_one_is_next_and_the_rest_lies_ahead()
    {
        var way = Way([(SampleStep.Asked, 0), (SampleStep.OnTheWay, 2)], today: 3);

        Assert.Equal(
            [StepState.Done, StepState.Done, StepState.Next, StepState.Ahead, StepState.Ahead, StepState.Ahead, StepState.Ahead],
            way.Select(stop => stop.State));
    }

    [Theory]
    [InlineData(6, 4, false)]
    [InlineData(7, 5, true)]
    public void It_is_late_on_the_first_day_after_those_that_the_house_allows(int today, int waits, bool isLate)
    {
        var habits = new SampleHabits();
        habits.AllowDays(null, null, 4, null, null, null);

        var way = Way([(SampleStep.Received, 2)], today, habits);

        Assert.Equal((waits, isLate), (way[2].WaitingDays!.Value, way[2].IsLate));
        Assert.All(way.Where(stop => stop.Step != SampleStep.Received), stop => Assert.Null(stop.WaitingDays));
    }

    [Fact]
    public void Without_a_limit_and_once_decided_nothing_is_late()
    {
        var habits = new SampleHabits();
        habits.AllowDays(null, null, null, null, null, null);

        Assert.False(Way([(SampleStep.Asked, 0)], 300, habits)[0].IsLate);
        Assert.All(Way([(SampleStep.Decided, 0)], 300), stop => Assert.Null(stop.WaitingDays));
    }

    [Fact]
    public void A_sample_of_a_coffee_that_is_gone_waits_for_nothing()
    {
        var way = SampleWay.Of([new StepTaken(SampleStep.Received, Day)], new SampleHabits(), Day.AddDays(200), isWanted: false);

        Assert.All(way, stop => Assert.False(stop.IsLate));
        Assert.DoesNotContain(way, stop => stop.State == StepState.Next);
    }

    [Fact]
    public void Days_are_between_none_and_a_year()
    {
        var habits = new SampleHabits();

        Assert.Equal("GradedDays", Assert.Throws<RuleBrokenException>(() => habits.AllowDays(1, 1, 1, -1, 1, 1)).Field);
    }

    private static IReadOnlyList<SampleStop> Way((SampleStep Step, int Day)[] taken, int today, SampleHabits? habits = null) =>
        SampleWay.Of([.. taken.Select(step => new StepTaken(step.Step, Day.AddDays(step.Day)))], habits ?? new SampleHabits(), Day.AddDays(today));
}
