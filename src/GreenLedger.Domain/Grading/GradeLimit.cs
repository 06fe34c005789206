namespace GreenLedger.Domain.Grading;

/// <summary>One limit as it was held against a grade when it was written down, so that later limits do not change it.</summary>
public sealed class GradeLimit
{
    private GradeLimit()
    {
        Limits = "";
        Name = "";
        Limit = "";
    }

    internal GradeLimit(int position, string limits, LimitCheck check)
    {
        Position = position;
        (Limits, Name, Found, Limit, Passed) = (limits, check.Name, check.Found, check.Limit, check.Passed);
    }

    public int Position { get; private set; }

    /// <summary>The published set that the limit belongs to.</summary>
    public string Limits { get; private set; }

    public string Name { get; private set; }

    /// <summary>Null where nothing was measured.</summary>
    public string? Found { get; private set; }

    public string Limit { get; private set; }

    public bool? Passed { get; private set; }

    internal void Hold(string limits, LimitCheck check) =>
        (Limits, Name, Found, Limit, Passed) = (limits, check.Name, check.Found, check.Limit, check.Passed);
}
