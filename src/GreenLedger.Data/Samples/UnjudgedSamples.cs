using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Samples;

/// <summary>Why nobody will judge a pre-shipment sample any more.</summary>
/// <param name="ContractId">The contract whose goods moved past their approval.</param>
/// <param name="What">What they did: “shipped without approval”, “shipped” where another sample was approved or none was asked for, or “cancelled”.</param>
/// <param name="On">The day of it.</param>
public sealed record SampleUnjudged(Id<Contract> ContractId, string What, DateOnly On);

/// <summary>Pre-shipment samples that came to no judgement, because every contract of their lot has moved past it.</summary>
internal static class UnjudgedSamples
{
    private static readonly List<GoodsState> Past = [GoodsState.Shipped, GoodsState.Arrived, GoodsState.Closed, GoodsState.Cancelled];

    /// <summary>Those that a contract can still judge, or that stand on no contract yet.</summary>
    public static IQueryable<Sample> Judgeable(this IQueryable<Sample> samples, LedgerContext db) => samples
        .Where(sample => sample.Kind != SampleKind.PreShipment
            || !db.Contracts.Any(contract => contract.Lots.Any(lot => lot.LotId == sample.LotId))
            || db.Contracts.Any(contract => contract.Lots.Any(lot => lot.LotId == sample.LotId) && !Past.Contains(contract.Goods)));

    /// <summary>What happened to the goods instead of a judgement, by the contract that moved last; null where it is judged, may be, or needs none.</summary>
    public static async Task<SampleUnjudged?> UnjudgedAsync(this LedgerContext db, Sample sample, CancellationToken cancellationToken)
    {
        if (sample.Kind != SampleKind.PreShipment
            || await db.Set<SampleApproval>().AnyAsync(approval => approval.SampleId == sample.Id, cancellationToken)
            || await db.Samples.Where(one => one.Id == sample.Id).Judgeable(db).AnyAsync(cancellationToken))
        {
            return null;
        }

        var contracts = await db.Contracts.AsNoTracking().Where(contract => contract.Lots.Any(lot => lot.LotId == sample.LotId)).Whole().ToListAsync(cancellationToken);
        return contracts.Select(contract => Of(contract, sample)).OfType<SampleUnjudged>().MaxBy(one => one.On);
    }

    /// <summary>The last move by which the goods left the states in which a sample may be judged.</summary>
    private static SampleUnjudged? Of(Contract contract, Sample sample)
    {
        var words = Past.ConvertAll(state => state.Word());
        var move = contract.Moves.Where(one => one.Axis == MoveAxis.Goods && words.Contains(one.To) && !words.Contains(one.From)).MaxBy(one => one.Number);
        return move is null ? null : new SampleUnjudged(
            contract.Id, move.To == GoodsState.Shipped.Word() && contract.LacksApproval(sample.LotId) ? "shipped without approval" : move.To, move.On);
    }
}
