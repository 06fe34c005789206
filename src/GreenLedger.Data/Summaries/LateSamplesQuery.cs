using GreenLedger.Data.Cupping;
using GreenLedger.Data.People;
using GreenLedger.Data.Samples;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Summaries;

/// <summary>Counts samples that stand at a step for longer than the house allows, for the first page.</summary>
public sealed class LateSamplesQuery(LedgerContext db, SampleQuery samples)
{
    /// <param name="today">The day that waiting is counted to.</param>
    /// <param name="seal">What an open session keeps from the person who asks.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyDictionary<SampleStep, int>> FindAsync(DateOnly today, Seal seal, CancellationToken cancellationToken) =>
        await samples.LateAsync(new LateRule(await db.SampleHabits.AsNoTracking().OfHouseAsync(cancellationToken), today, await db.ZoneAsync(cancellationToken)), seal, cancellationToken);
}
