using GreenLedger.Data;
using GreenLedger.Domain.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Cupping;

/// <summary>The errors that the house expects of a panel.</summary>
internal static class Errors
{
    public static async Task<ExpectedErrors> ExpectedAsync(LedgerContext db, CancellationToken cancellationToken) =>
        ExpectedErrors.Of(await db.Houses.AsNoTracking().SingleAsync(cancellationToken));
}
