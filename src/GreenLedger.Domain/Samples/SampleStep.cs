namespace GreenLedger.Domain.Samples;

/// <summary>
/// The steps of a sample's way, in order. The first three are told by the sample itself, the later ones are read from
/// its grades, roasts, closed sessions and the decisions on its lot.
/// </summary>
public enum SampleStep
{
    Asked = 0,
    OnTheWay = 1,
    Received = 2,
    Graded = 3,
    Roasted = 4,
    Cupped = 5,
    Decided = 6,
}

/// <summary>The words for a sample's steps.</summary>
public static class SampleSteps
{
    public static IReadOnlyList<SampleStep> All { get; } = Enum.GetValues<SampleStep>();

    /// <summary>As it stands on a sample's way: <c>on the way</c>.</summary>
    public static string Word(this SampleStep step) => step switch
    {
        SampleStep.Asked => "asked for",
        SampleStep.OnTheWay => "on the way",
        _ => step.ToString().ToLowerInvariant(),
    };
}
