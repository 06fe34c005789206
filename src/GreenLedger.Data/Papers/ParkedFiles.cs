using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Papers;

/// <summary>Files that were sent and that nothing followed.</summary>
public static class ParkedFiles
{
    public static readonly TimeSpan Patience = TimeSpan.FromDays(1);

    /// <summary>Removes parked files older than a day, bytes and all, and what nodes found in such; how many files they were.</summary>
    public static async Task<int> SweepAsync(LedgerContext db, DateTimeOffset now, CancellationToken cancellationToken)
    {
        var before = now - Patience;
        await db.Jobs.Where(job => job.Found != null && job.EndedAt < before).ExecuteDeleteAsync(cancellationToken);
        return await db.StoredFiles.Where(file => file.IsParked && file.At < before).ExecuteDeleteAsync(cancellationToken);
    }
}
