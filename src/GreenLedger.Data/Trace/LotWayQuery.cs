using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Trace;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Trace;

/// <summary>Reads across the rooms what has happened to a lot.</summary>
public sealed class LotWayQuery(LedgerContext db)
{
    public async Task<IReadOnlyList<WayStop>> FindAsync(Id<Lot> lotId, CancellationToken cancellationToken)
    {
        var offer = await db.Offers.AsNoTracking().Where(one => one.LotId == lotId)
            .OrderBy(one => one.FirstOfferedOn).FirstOrDefaultAsync(cancellationToken);
        var sample = await db.Samples.AsNoTracking().Where(one => one.LotId == lotId && one.ReceivedOn != null)
            .OrderByDescending(one => one.ReceivedOn).FirstOrDefaultAsync(cancellationToken);
        var result = await db.SampleResults.AsNoTracking()
            .Where(one => one.LotId == lotId)
            .OrderByDescending(one => one.HeldOn)
            .Select(one => new { one.HeldOn, one.Fitted })
            .FirstOrDefaultAsync(cancellationToken);
        var decision = await db.Decisions.AsNoTracking().Where(one => one.LotId == lotId && one.WithdrawnAt == null)
            .OrderByDescending(one => one.At).FirstOrDefaultAsync(cancellationToken);
        var contract = await db.Contracts.AsNoTracking().Whole()
            .Where(one => one.Goods != GoodsState.Cancelled && one.Lots.Any(lot => lot.LotId == lotId))
            .OrderByDescending(one => one.Ref).FirstOrDefaultAsync(cancellationToken);
        return LotWay.Of(new WayFacts(
            offer?.FirstOfferedOn,
            offer?.StatedScore,
            sample?.ReceivedOn,
            sample?.Weight,
            result?.HeldOn,
            result?.Fitted,
            decision is null ? null : DateOnly.FromDateTime(decision.At.UtcDateTime),
            decision?.Outcome,
            decision?.Quantity,
            contract is null ? null : contract.Versions[0].SignedOn ?? DateOnly.FromDateTime(contract.Versions[0].WrittenAt.UtcDateTime),
            contract is null ? null : contract.IsSigned ? contract.Ref : $"{contract.Ref}, draft"));
    }
}
