namespace GreenLedger.Web.Tests;

/// <summary>A clock that shows one moment until it is set.</summary>
internal sealed class StoppedClock(DateTimeOffset now) : TimeProvider
{
    public DateTimeOffset Now { get; set; } = now;

    public override DateTimeOffset GetUtcNow() => Now;
}
