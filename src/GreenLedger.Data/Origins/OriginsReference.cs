using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Origins;

/// <summary>What a new ledger knows about origins before anybody typed anything.</summary>
internal static class OriginsReference
{
    /// <summary>Adds the standard countries and process methods to a ledger that has none; later edits are left alone.</summary>
    public static async Task FillAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        if (!await db.Countries.AnyAsync(cancellationToken))
        {
            db.Countries.AddRange(StandardCountries.All());
        }

        if (!await db.ProcessMethods.AnyAsync(cancellationToken))
        {
            db.ProcessMethods.AddRange(StandardProcessMethods.All());
        }

        await db.SaveChangesAsync(cancellationToken);
    }
}
