namespace GreenLedger.Domain.Offers;

/// <summary>Where a long piece of work stands.</summary>
public enum JobState
{
    Waiting = 0,
    Running = 1,
    Done = 2,
    Failed = 3,
}
