using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Cupping;

/// <summary>
/// A sheet while it is being written: everything typed, saved as it happens and by its field, until it is handed in.
/// Nothing in it counts before that.
/// </summary>
public sealed class SheetDraft
{
    private readonly List<DraftChange> _changes = [];

    private SheetDraft()
    {
        Code = "";
        Values = new Dictionary<string, string>();
    }

    public SheetDraft(Id<CuppingSession> sessionId, Id<Person> cupperId, string code)
        : this()
    {
        Id = Id<SheetDraft>.New();
        SessionId = sessionId;
        CupperId = cupperId;
        Code = code;
    }

    public Id<SheetDraft> Id { get; private set; }

    /// <summary>The version of the draft: counts its changes. A change says on which it was made.</summary>
    public int ChangeCount { get; private set; }

    public Id<CuppingSession> SessionId { get; private set; }

    public Id<Person> CupperId { get; private set; }

    public string Code { get; private set; }

    /// <summary>What stands in each field, as <see cref="SheetFields"/> names them.</summary>
    public IReadOnlyDictionary<string, string> Values { get; private set; }

    /// <summary>How many of the form's attributes have something in them.</summary>
    public int Filled { get; private set; }

    public DateTimeOffset ChangedAt { get; private set; }

    /// <summary>When the sheet was handed in; a handed-in draft takes no change until the sheet is opened again.</summary>
    public DateTimeOffset? HandedInAt { get; private set; }

    /// <summary>The changes made since this draft was loaded.</summary>
    public IReadOnlyList<DraftChange> Changes => _changes;

    /// <summary>Puts values into fields; empty text clears one. The fields have been checked against the form.</summary>
    /// <param name="key">Made by whoever sends the change, so that it counts once however often it arrives.</param>
    /// <exception cref="RuleBrokenException">The sheet is handed in.</exception>
    public void Change(Guid key, IReadOnlyDictionary<string, string> values, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(values);
        Rule.Require(HandedInAt is null, $"The sheet for {Code} is handed in and closed: open it again with a reason to change it.", nameof(Code));
        var now = new Dictionary<string, string>(Values);
        foreach (var (field, value) in values)
        {
            now[field] = value;
            if (value.Length == 0)
            {
                now.Remove(field);
            }
        }

        Values = now;
        Filled = now.Keys.Count(SheetFields.IsAttribute);
        ChangeCount++;
        ChangedAt = at;
        _changes.Add(new DraftChange(Id, key, ChangeCount, at));
    }

    /// <summary>Closes the draft because its sheet was handed in.</summary>
    public void HandIn(DateTimeOffset at)
    {
        HandedInAt = at;
        ChangeCount++;
    }

    /// <summary>Takes over what the sheet says, which was handed in on paper or was opened again.</summary>
    public void Follow(ScoreSheet sheet, CuppingSession session)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(session);
        Values = SheetFields.Of(sheet, session.Form.Rules, session.CupsPerSample);
        Filled = Values.Keys.Count(SheetFields.IsAttribute);
        HandedInAt = sheet.IsReopened ? null : sheet.WrittenAt;
        ChangedAt = sheet.IsReopened ? sheet.EarlierSheets[^1].ReopenedAt : sheet.WrittenAt;
        ChangeCount++;
    }
}

/// <summary>One change of a draft that was taken: its key, and the version of the draft that it led to.</summary>
public sealed class DraftChange
{
    private DraftChange()
    {
    }

    internal DraftChange(Id<SheetDraft> draftId, Guid key, int ledTo, DateTimeOffset at)
    {
        DraftId = draftId;
        Key = key;
        LedTo = ledTo;
        At = at;
    }

    public Id<SheetDraft> DraftId { get; private set; }

    public Guid Key { get; private set; }

    public int LedTo { get; private set; }

    public DateTimeOffset At { get; private set; }
}
