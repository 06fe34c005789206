using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>The published forms, which every ledger has from the start.</summary>
internal static class CuppingReference
{
    /// <summary>Adds the published forms that are missing; revisions of the house are left alone.</summary>
    public static async Task FillAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        var there = await db.CuppingForms.Select(form => form.Id).ToListAsync(cancellationToken);
        db.CuppingForms.AddRange(CuppingForm.Published().Where(form => !there.Contains(form.Id)));
        await db.SaveChangesAsync(cancellationToken);
    }
}
