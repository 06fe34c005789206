using GreenLedger.Domain.Contracts;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Contracts;

/// <summary>What a new ledger knows about forms and closing days before anybody typed anything.</summary>
internal static class ContractsReference
{
    /// <summary>The years that a new ledger has closing days for; the house adds later ones from the exchanges' lists.</summary>
    private const int FirstYear = 2026;
    private const int LastYear = 2029;

    /// <summary>Adds them to a ledger that has none; later edits are left alone.</summary>
    public static async Task FillAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        if (!await db.StandardForms.AnyAsync(cancellationToken))
        {
            db.AddRange(StandardForms.All());
        }

        if (!await db.ExchangeHolidays.AnyAsync(cancellationToken))
        {
            db.AddRange(Enumerable.Range(FirstYear, LastYear - FirstYear + 1).SelectMany(StandardHolidays.Of));
        }

        await db.SaveChangesAsync(cancellationToken);
    }
}
