using GreenLedger.Data.People;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace GreenLedger.Data.Papers;

/// <summary>
/// Writes the history in the same save as the change itself: one line for each record, its parts within. An offer list
/// that is taken in is one line with its counts; its rows have none.
/// </summary>
internal sealed class HistoryWriter(Who who, TimeProvider clock) : SaveChangesInterceptor
{
    /// <summary>What the rows of an offer list become; the list keeps the file that says all of it.</summary>
    private static readonly HashSet<Type> ListRows = [typeof(Lot), typeof(Offer), typeof(OfferPrice), typeof(SetAsideRow), typeof(Producer)];

    public override InterceptionResult<int> SavingChanges(DbContextEventData eventData, InterceptionResult<int> result)
    {
        Write(eventData.Context!);
        return result;
    }

    public override ValueTask<InterceptionResult<int>> SavingChangesAsync(
        DbContextEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        Write(eventData.Context!);
        return ValueTask.FromResult(result);
    }

    private void Write(DbContext db)
    {
        var tracker = db.ChangeTracker;
        var detects = tracker.AutoDetectChangesEnabled;
        tracker.AutoDetectChangesEnabled = false;
        try
        {
            foreach (var stale in tracker.Entries<Change>().Where(entry => entry.State == EntityState.Added).ToList())
            {
                stale.State = EntityState.Detached;
            }

            var now = clock.GetUtcNow();
            foreach (var line in Lines(tracker))
            {
                db.Add(line.Close(who.Person, now));
            }
        }
        finally
        {
            tracker.AutoDetectChangesEnabled = detects;
        }
    }

    private static List<HistoryLine> Lines(ChangeTracker tracker)
    {
        var changed = tracker.Entries()
            .Where(entry => entry.State is EntityState.Added or EntityState.Modified or EntityState.Deleted)
            .Where(entry => RecordKinds.IsRecorded(entry.Metadata));
        var isImport = tracker.Entries<OfferList>().Any(entry => entry.State == EntityState.Added);
        var entries = changed.Where(entry => !isImport || !ListRows.Contains(entry.Metadata.ClrType)).ToList();
        var wholes = new Wholes(tracker);
        var lines = new Dictionary<(string Kind, string Id), HistoryLine>();
        foreach (var entry in entries)
        {
            var (whole, kind, id) = wholes.Of(entry);
            if (!lines.TryGetValue((kind, id), out var line))
            {
                lines[(kind, id)] = line = new HistoryLine(kind, id, whole);
            }

            line.Take(entry);
        }

        return [.. lines.Values.Where(line => line.SaysSomething)];
    }
}
