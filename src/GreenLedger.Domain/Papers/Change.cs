using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Papers;

/// <summary>
/// One line of the ledger's history: who added, changed or removed which record, when, and what stood before and after.
/// A record's parts (the sheets of a session, the legs of a route) stand in the line of their record. Lines are written
/// by the ledger itself with every save and are never changed.
/// </summary>
public sealed class Change
{
    public const int LongestName = 200;

    private Change() => RecordKind = RecordId = RecordName = "";

    /// <param name="recordKind">The word for what was changed: <c>Lot</c>.</param>
    /// <param name="recordId">The record's identity as text.</param>
    /// <param name="recordName">What the record was called then.</param>
    /// <param name="act">What was done.</param>
    /// <param name="by">Null where the ledger itself did it, as at a first start.</param>
    /// <param name="at">When it was saved.</param>
    /// <param name="before">The changed members as they stood, a JSON object with the units in the names; null if added.</param>
    /// <param name="after">The changed members as they stand now; null if removed.</param>
    public Change(
        string recordKind, string recordId, string recordName, ChangeAct act, Id<Person>? by, DateTimeOffset at, string? before, string? after)
    {
        Id = Id<Change>.New();
        RecordKind = recordKind;
        RecordId = recordId;
        RecordName = recordName.Length > LongestName ? recordName[..LongestName] : recordName;
        Act = act;
        By = by;
        At = at;
        Before = before;
        After = after;
    }

    public Id<Change> Id { get; private set; }

    public string RecordKind { get; private set; }

    public string RecordId { get; private set; }

    public string RecordName { get; private set; }

    public ChangeAct Act { get; private set; }

    public Id<Person>? By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public string? Before { get; private set; }

    public string? After { get; private set; }
}
