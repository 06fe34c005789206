using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Shipments;

/// <summary>What a new ledger knows about shipping documents before anybody typed anything.</summary>
internal static class ShipmentsReference
{
    /// <summary>Adds them to a ledger that has none; later edits are left alone.</summary>
    public static async Task FillAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        if (!await db.DocumentRules.AnyAsync(cancellationToken))
        {
            db.AddRange(StandardDocuments.All());
            await db.SaveChangesAsync(cancellationToken);
        }
    }
}
