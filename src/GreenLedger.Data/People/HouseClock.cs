using GreenLedger.Domain.Measures;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.People;

/// <summary>Reads by which clocks the house counts its days.</summary>
public static class HouseClock
{
    /// <summary>UTC where the house has not said its zone.</summary>
    public static async Task<ClockZone> ZoneAsync(this LedgerContext db, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(db);
        return ClockZone.Of(await db.Houses.Select(house => house.TimeZone).SingleOrDefaultAsync(cancellationToken) ?? ClockZone.Utc.Name);
    }
}
