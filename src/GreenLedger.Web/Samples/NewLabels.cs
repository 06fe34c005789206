using GreenLedger.Data;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Samples;

/// <summary>Draws label codes that no sample of the house has.</summary>
internal static class NewLabels
{
    public static async Task<LabelCodes> NewLabelsAsync(this LedgerContext db, CancellationToken cancellationToken) =>
        new(await db.Samples.Select(sample => sample.LabelCode).ToListAsync(cancellationToken), Random.Shared);
}
