namespace GreenLedger.Domain.Samples;

/// <summary>A step that happened: its day, by whom where that is known, and what was found there, ready to read.</summary>
public sealed record StepTaken(SampleStep Step, DateOnly On, string? By = null, string? Figure = null);

/// <summary>Where a step stands on a sample's way.</summary>
public enum StepState
{
    /// <summary>It happened.</summary>
    Done = 0,

    /// <summary>A later step happened without it.</summary>
    Skipped = 1,

    /// <summary>The one that the sample waits for.</summary>
    Next = 2,

    /// <summary>It lies further ahead.</summary>
    Ahead = 3,
}

/// <summary>One stop on a sample's way.</summary>
/// <param name="WaitingDays">At the stop where the sample stands: days since then; else null.</param>
/// <param name="IsLate">It stands there for longer than the house allows.</param>
public sealed record SampleStop(SampleStep Step, StepState State, StepTaken? Taken, int? WaitingDays, bool IsLate);

/// <summary>A sample's way as one line: what happened, what was left out, where it stands and for how long.</summary>
public static class SampleWay
{
    /// <param name="taken">The steps that happened, at most one of each.</param>
    /// <param name="habits">How long the house lets a sample stand.</param>
    /// <param name="today">The day that waiting is counted to.</param>
    /// <param name="isWanted">False where nothing more is wanted of it: its coffee can no longer be had, or its way has ended.</param>
    public static IReadOnlyList<SampleStop> Of(IReadOnlyCollection<StepTaken> taken, SampleHabits habits, DateOnly today, bool isWanted = true)
    {
        ArgumentNullException.ThrowIfNull(taken);
        ArgumentNullException.ThrowIfNull(habits);
        var here = taken.MaxBy(step => step.Step);
        return [.. SampleSteps.All.Select(step => Stop(step, taken.FirstOrDefault(one => one.Step == step)))];

        SampleStop Stop(SampleStep step, StepTaken? happened)
        {
            if (happened is null)
            {
                var state = here is not null && step < here.Step ? StepState.Skipped
                    : isWanted && step == (here is null ? SampleStep.Asked : here.Step + 1) ? StepState.Next
                    : StepState.Ahead;
                return new SampleStop(step, state, null, null, false);
            }

            int? waiting = isWanted && happened == here && step != SampleStep.Decided ? Math.Max(0, today.DayNumber - happened.On.DayNumber) : null;
            return new SampleStop(step, StepState.Done, happened, waiting, waiting > habits.DaysAt(step));
        }
    }
}
