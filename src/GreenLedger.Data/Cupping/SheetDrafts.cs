using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>Named parts of the sheets that are being written.</summary>
public static class SheetDrafts
{
    /// <summary>
    /// The draft behind a sheet that was handed in or opened again in this request, brought to what the sheet says, so that
    /// a phone which has it open sees it. Saved with the sheet.
    /// </summary>
    public static async Task<SheetDraft> DraftOfAsync(
        this LedgerContext db, CuppingSession session, ScoreSheet sheet, string code, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(sheet);
        var cupper = sheet.CupperId!.Value;
        var draft = await db.SheetDrafts.SingleOrDefaultAsync(
            draft => draft.SessionId == session.Id && draft.CupperId == cupper && draft.Code == code, cancellationToken);
        if (draft is null)
        {
            draft = new SheetDraft(session.Id, cupper, code);
            db.Add(draft);
        }

        draft.Follow(sheet, session);
        return draft;
    }

    /// <summary>Adds to the house's list the words of a sheet that are not in it yet; saved with the sheet.</summary>
    public static async Task LearnWordsAsync(this LedgerContext db, ScoreSheet sheet, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(sheet);
        var known = await db.Descriptors.Select(descriptor => descriptor.Word).ToListAsync(cancellationToken);
        db.AddRange(sheet.Descriptors.Except(known, StringComparer.OrdinalIgnoreCase).Select(word => new Descriptor(word)));
    }
}
