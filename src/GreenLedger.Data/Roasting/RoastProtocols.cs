using GreenLedger.Domain.Roasting;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Roasting;

/// <summary>Named parts of the protocols' table.</summary>
public static class RoastProtocols
{
    /// <summary>The windows that hold now; null where the house has stated none yet.</summary>
    public static Task<RoastProtocol?> NewestAsync(this IQueryable<RoastProtocol> protocols, CancellationToken cancellationToken) =>
        protocols.OrderByDescending(protocol => protocol.From).ThenByDescending(protocol => protocol.Id).FirstOrDefaultAsync(cancellationToken);

    /// <summary>The windows that hold now; where the house has stated none, the usual ones are written down first.</summary>
    public static async Task<RoastProtocol> NewestOrUsualAsync(this LedgerContext db, DateTimeOffset at, CancellationToken cancellationToken)
    {
        if (await db.RoastProtocols.NewestAsync(cancellationToken) is { } newest)
        {
            return newest;
        }

        var usual = new RoastProtocol(RoastWindows.Usual, at);
        db.Add(usual);
        return usual;
    }
}
