using GreenLedger.Domain.Grading;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Grading;

/// <summary>The published defect schemes and limits that every ledger has from the start.</summary>
internal static class GradingReference
{
    /// <summary>Adds those that are missing; revisions of the house are left alone.</summary>
    public static async Task FillAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        var schemes = await db.SchemeRevisions.Where(one => one.Revision == 1).Select(one => one.Code).ToListAsync(cancellationToken);
        db.AddRange(SchemeRevision.Published().Where(one => !schemes.Contains(one.Code)));
        var limits = await db.LimitsRevisions.Where(one => one.Revision == 1).Select(one => one.Code).ToListAsync(cancellationToken);
        db.AddRange(LimitsRevision.Published().Where(one => !limits.Contains(one.Code)));
        await db.SaveChangesAsync(cancellationToken);
    }
}
