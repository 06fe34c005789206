namespace GreenLedger.Domain.Papers;

/// <summary>What was done to a record.</summary>
public enum ChangeAct
{
    Added = 0,
    Changed = 1,
    Removed = 2,
}
