namespace GreenLedger.Web.Api;

/// <summary>That a record no longer counts; null where it does.</summary>
internal sealed record WithdrawnReply(DateTimeOffset At, string Because)
{
    public static WithdrawnReply? Of(DateTimeOffset? at, string? because) => at is { } withdrawn ? new WithdrawnReply(withdrawn, because ?? "") : null;
}
