using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>What is needed to judge and store some changes of sheets, read in a handful of statements.</summary>
internal sealed class DraftBatch
{
    private readonly LedgerContext _db;
    private readonly Dictionary<Id<CuppingSession>, DraftTable> _tables;
    private readonly Dictionary<(Id<CuppingSession>, Id<Person>, string), SheetDraft> _drafts;
    private readonly Dictionary<(Id<SheetDraft>, Guid), int> _known;

    private DraftBatch(LedgerContext db, List<DraftTable> tables, List<SheetDraft> drafts, List<DraftChange> known)
    {
        _db = db;
        _tables = tables.ToDictionary(table => table.Id);
        _drafts = drafts.ToDictionary(draft => (draft.SessionId, draft.CupperId, draft.Code));
        _known = known.ToDictionary(change => (change.DraftId, change.Key), change => change.LedTo);
    }

    public static async Task<DraftBatch> LoadAsync(LedgerContext db, IReadOnlyList<DraftSave> saves, CancellationToken cancellationToken)
    {
        var sessions = saves.Select(save => save.SessionId).Distinct().ToList();
        var cuppers = saves.Select(save => save.CupperId).Distinct().ToList();
        var codes = saves.Select(save => save.Code).Distinct().ToList();
        var keys = saves.Select(save => save.Key).Distinct().ToList();
        var tables = new List<DraftTable>();
        foreach (var id in sessions)
        {
            if (await DraftTable.FindAsync(db, id, cancellationToken) is { } table)
            {
                tables.Add(table);
            }
        }

        var drafts = await db.SheetDrafts
            .Where(draft => sessions.Contains(draft.SessionId) && cuppers.Contains(draft.CupperId) && codes.Contains(draft.Code))
            .ToListAsync(cancellationToken);
        var known = await db.DraftChanges.AsNoTracking().Where(change => keys.Contains(change.Key)).ToListAsync(cancellationToken);
        return new DraftBatch(db, tables, drafts, known);
    }

    /// <summary>Judges one change and, where it is right, makes it.</summary>
    public DraftOutcome Take(DraftSave save, DateTimeOffset at)
    {
        if (!_tables.TryGetValue(save.SessionId, out var table) || !table.Codes.Contains(save.Code))
        {
            return new DraftOutcome(DraftAnswer.NotFound, 0, DraftOutcome.Nothing);
        }

        var draft = _drafts.GetValueOrDefault((save.SessionId, save.CupperId, save.Code));
        if (draft is not null && _known.TryGetValue((draft.Id, save.Key), out var ledTo))
        {
            return DraftOutcome.Saved(ledTo);
        }

        try
        {
            table.Check(save);
            if (save.BasedOn != (draft?.ChangeCount ?? 0))
            {
                return new DraftOutcome(DraftAnswer.Conflict, draft?.ChangeCount ?? 0, draft?.Values ?? DraftOutcome.Nothing);
            }

            draft ??= Begin(save);
            draft.Change(save.Key, save.Values, at);
            _known[(draft.Id, save.Key)] = draft.ChangeCount;
            return DraftOutcome.Saved(draft.ChangeCount);
        }
        catch (RuleBrokenException broken)
        {
            // One change of many: its refusal must not undo the others of the transaction.
            return new DraftOutcome(DraftAnswer.Refused, draft?.ChangeCount ?? 0, DraftOutcome.Nothing, broken.Message, broken.Field);
        }
    }

    private SheetDraft Begin(DraftSave save)
    {
        var draft = new SheetDraft(save.SessionId, save.CupperId, save.Code);
        _drafts.Add((save.SessionId, save.CupperId, save.Code), draft);
        _db.Add(draft);
        return draft;
    }
}

/// <summary>What a table asks of the sheets that are written at it.</summary>
internal sealed record DraftTable(
    Id<CuppingSession> Id, bool IsClosed, int Cups, FormRules Rules, DescriptiveRules? Descriptive, HashSet<string> Codes, HashSet<Id<Person>>? Cuppers)
{
    public static async Task<DraftTable?> FindAsync(LedgerContext db, Id<CuppingSession> id, CancellationToken cancellationToken)
    {
        var row = await db.CuppingSessions.AsNoTracking().Where(session => session.Id == id).Select(session => new
        {
            session.ClosedAt,
            session.CupsPerSample,
            session.Form.Rules,
            IsByPlace = session.Blinding == Blinding.Undersides && session.Sheets.Count == 0,
            Descriptive = db.DescriptiveForms.Where(form => form.Id == session.DescriptiveFormId).OrderBy(form => form.Id).Select(form => form.Rules).FirstOrDefault(),
        }).SingleOrDefaultAsync(cancellationToken);
        if (row is null)
        {
            return null;
        }

        var codes = await db.CuppingSessions.Where(session => session.Id == id).SelectMany(session => session.Samples).Select(sample => sample.Code).ToListAsync(cancellationToken);
        var panel = await db.CuppingSessions.Where(session => session.Id == id).SelectMany(session => session.Panel)
            .Select(member => new { member.PersonId, member.ServingOrder }).ToListAsync(cancellationToken);
        return new DraftTable(
            id, row.ClosedAt is not null, row.CupsPerSample, row.Rules, row.Descriptive,
            [.. row.IsByPlace ? Enumerable.Range(1, codes.Count).Select(CuppingSession.PlaceOf) : codes],
            panel.Count == 0 ? null : [.. panel.Where(member => member.ServingOrder.Count > 0).Select(member => member.PersonId)]);
    }

    /// <exception cref="RuleBrokenException">Closed, not one of the cuppers, or a value that its field cannot hold.</exception>
    public void Check(DraftSave save)
    {
        Rule.Require(!IsClosed, "This session is closed: its sheets stay as they were handed in.", nameof(CuppingSession.Sheets));
        Rule.Require(Cuppers is null || Cuppers.Contains(save.CupperId), "You do not cup at this table: whoever leads can add a latecomer.", nameof(CuppingSession.Panel));
        Rule.Require(save.Values.Count is > 0 and <= 60, "A change has between 1 and 60 values.", nameof(DraftSave.Values));
        foreach (var (field, value) in save.Values)
        {
            SheetFields.Check(field, value, Rules, Cups, Descriptive);
        }
    }
}
