using GreenLedger.Data;
using GreenLedger.Data.Trace;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Trace;
using GreenLedger.SeedDemo.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.SeedDemo.Trace;

/// <summary>The yearly mock recall of the house: of the lot that left in most batches.</summary>
internal sealed class RecallDrill(Cast cast, DateTimeOffset now)
{
    public async Task<MockRecall?> HoldAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        var movements = await db.Movements.AsNoTracking().Where(movement => movement.Kind == MovementKind.Release).Select(movement => movement.LotId).ToListAsync(cancellationToken);
        if (movements.Count == 0)
        {
            return null;
        }

        var lot = movements.GroupBy(id => id).OrderByDescending(same => same.Count()).ThenBy(same => same.Key).First().Key;
        var found = (await new TraceQuery(db).FindAsync(TraceFrom.Lot, lot.Value, cancellationToken))!;
        var started = now.AddHours(-2);
        var recall = new MockRecall($"M{started.Year % 100:00}-001", TraceFrom.Lot, lot.Value, found.Name, "The yearly exercise: an off-flavour is supposed in every bag of it", cast.Buyer.Id, started);
        recall.End(RecallFindings.Of(found.Facts, found.Starts), "Batches were found at once; the list of customers of two of them came late from the roastery.", cast.Lead.Id, started.AddMinutes(41).AddSeconds(20));
        return recall;
    }
}
