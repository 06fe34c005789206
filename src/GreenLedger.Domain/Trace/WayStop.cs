namespace GreenLedger.Domain.Trace;

/// <summary>
/// One stop on a lot's way: its word, the day it was reached (null while it lies ahead), and the one figure that
/// matters there, ready to read.
/// </summary>
public sealed record WayStop(string Word, DateOnly? On, string? Figure)
{
    public bool IsReached => On is not null;
}
