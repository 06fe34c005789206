using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>One change of a sheet that is being written.</summary>
/// <param name="Key">Made by the sender; a change that arrives again under the same key counts once.</param>
/// <param name="BasedOn">The version of the draft that the sender last knew; 0 for a sheet not begun.</param>
public sealed record DraftSave(
    Id<CuppingSession> SessionId, Id<Person> CupperId, string Code, Guid Key, int BasedOn, IReadOnlyDictionary<string, string> Values);

/// <summary>What became of a change.</summary>
public enum DraftAnswer
{
    /// <summary>It is stored, now or when it arrived first.</summary>
    Saved = 0,

    /// <summary>Another device changed the sheet meanwhile: nothing was stored, and the stored sheet comes along.</summary>
    Conflict = 1,

    /// <summary>A rule refuses it, in a sentence.</summary>
    Refused = 2,

    /// <summary>There is no such session or code.</summary>
    NotFound = 3,
}

/// <summary>The answer to one change: the version that it led to, or the stored sheet that it clashes with.</summary>
public sealed record DraftOutcome(DraftAnswer Answer, int Version, IReadOnlyDictionary<string, string> Values, string? Refusal = null, string? Field = null)
{
    internal static readonly IReadOnlyDictionary<string, string> Nothing = new Dictionary<string, string>();

    internal static DraftOutcome Saved(int version) => new(DraftAnswer.Saved, version, Nothing);
}

/// <summary>
/// Stores many changes of sheets in one transaction, so that a whole table can write at once. It reads what it needs of a
/// table and no session as a whole. A lost race against another node is run again.
/// </summary>
public static class DraftSaves
{
    private const int Tries = 5;

    /// <summary>The outcome of each change, in their order.</summary>
    public static async Task<IReadOnlyList<DraftOutcome>> SaveDraftsAsync(
        this LedgerContext db, IReadOnlyList<DraftSave> saves, DateTimeOffset at, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(saves);
        for (var tries = 1; ; tries++)
        {
            try
            {
                db.ChangeTracker.Clear();
                return await SaveOnceAsync(db, saves, at, cancellationToken);
            }
            catch (DbUpdateException) when (tries < Tries)
            {
                // Another node took a change of the same sheet at this moment; what it stored is read and judged again.
            }
        }
    }

    private static async Task<IReadOnlyList<DraftOutcome>> SaveOnceAsync(
        LedgerContext db, IReadOnlyList<DraftSave> saves, DateTimeOffset at, CancellationToken cancellationToken)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellationToken);
        var batch = await DraftBatch.LoadAsync(db, saves, cancellationToken);
        var outcomes = saves.Select(save => batch.Take(save, at)).ToList();
        await db.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        return outcomes;
    }
}
