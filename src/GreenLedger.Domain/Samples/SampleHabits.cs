namespace GreenLedger.Domain.Samples;

/// <summary>
/// How the house runs its sample room: how many days a sample may stand at a step before it counts as waiting too
/// long, and how much green coffee is asked for. One row; common practice, no source.
/// </summary>
public sealed class SampleHabits
{
    public const int MostDays = 365;

    public Id<SampleHabits> Id { get; private set; } = Id<SampleHabits>.New();

    public int Version { get; private set; }

    /// <summary>Days from asking until it should be on the way; null is no limit.</summary>
    public int? AskedDays { get; private set; } = 7;

    /// <summary>Days with the courier.</summary>
    public int? OnTheWayDays { get; private set; } = 10;

    /// <summary>Days from receipt until it should be graded.</summary>
    public int? ReceivedDays { get; private set; } = 2;

    /// <summary>Days from grading until it should be roasted.</summary>
    public int? GradedDays { get; private set; } = 5;

    /// <summary>Days from roasting until it should be cupped.</summary>
    public int? RoastedDays { get; private set; } = 1;

    /// <summary>Days from cupping until it should be decided.</summary>
    public int? CuppedDays { get; private set; } = 14;

    /// <summary>Days that a sample may stand at this step; null is no limit.</summary>
    public int? DaysAt(SampleStep step) => step switch
    {
        SampleStep.Asked => AskedDays,
        SampleStep.OnTheWay => OnTheWayDays,
        SampleStep.Received => ReceivedDays,
        SampleStep.Graded => GradedDays,
        SampleStep.Roasted => RoastedDays,
        SampleStep.Cupped => CuppedDays,
        _ => null,
    };

    /// <exception cref="RuleBrokenException">A number of days is below 0 or above a year.</exception>
    public void AllowDays(int? asked, int? onTheWay, int? received, int? graded, int? roasted, int? cupped)
    {
        AskedDays = Allowed(asked, nameof(AskedDays));
        OnTheWayDays = Allowed(onTheWay, nameof(OnTheWayDays));
        ReceivedDays = Allowed(received, nameof(ReceivedDays));
        GradedDays = Allowed(graded, nameof(GradedDays));
        RoastedDays = Allowed(roasted, nameof(RoastedDays));
        CuppedDays = Allowed(cupped, nameof(CuppedDays));
    }

    private static int? Allowed(int? days, string field)
    {
        Rule.Require(days is null or (>= 0 and <= MostDays), $"Between 0 and {MostDays} days; leave it empty for no limit.", field);
        return days;
    }
}
