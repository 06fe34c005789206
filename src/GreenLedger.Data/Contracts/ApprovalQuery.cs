using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Contracts;

/// <summary>A pre-shipment sample that waits for a verdict, with its lot's name and its newest score.</summary>
public sealed record SampleToJudge(Sample Sample, string Lot, Score? Score);

/// <summary>Reads what waits for approval.</summary>
public sealed class ApprovalQuery(LedgerContext db)
{
    /// <summary>Pre-shipment samples of the contract's lots that are here and not judged, the oldest first.</summary>
    public async Task<IReadOnlyList<SampleToJudge>> ToJudgeAsync(Contract contract, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var lots = contract.Lots.Where(lot => !contract.IsApproved(lot.LotId)).Select(lot => lot.LotId).ToList();
        var judged = contract.Approvals.Select(approval => approval.SampleId).ToList();
        var samples = await db.Samples.AsNoTracking()
            .Where(sample => sample.Kind == SampleKind.PreShipment && sample.ReceivedOn != null && lots.Contains(sample.LotId) && !judged.Contains(sample.Id))
            .OrderBy(sample => sample.ReceivedOn).ThenBy(sample => sample.LabelCode).ToListAsync(cancellationToken);
        var ids = samples.ConvertAll(sample => sample.Id);
        var results = await db.SampleResults.AsNoTracking().Where(result => ids.Contains(result.SampleId))
            .OrderBy(result => result.HeldOn).Select(result => new { result.SampleId, result.Fitted }).ToListAsync(cancellationToken);
        var names = contract.Terms.Lots.ToDictionary(lot => lot.LotId, lot => lot.Name);
        return [.. samples.Select(sample => new SampleToJudge(sample, names[sample.LotId], results.LastOrDefault(result => result.SampleId == sample.Id)?.Fitted))];
    }

    /// <summary>The label codes of judged samples.</summary>
    public async Task<IReadOnlyDictionary<Id<Sample>, string>> CodesAsync(Contract contract, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var ids = contract.Approvals.Select(approval => approval.SampleId).ToList();
        return await db.Samples.AsNoTracking().Where(sample => ids.Contains(sample.Id)).ToDictionaryAsync(sample => sample.Id, sample => sample.LabelCode, cancellationToken);
    }

    /// <summary>How many signed contracts wait for an approval whose day is near or past, and the nearest of those days.</summary>
    public async Task<(int Count, DateOnly? Next)> DueAsync(DateOnly today, int within, CancellationToken cancellationToken)
    {
        var waiting = await db.Contracts.AsNoTracking().Where(contract => contract.Goods == GoodsState.AwaitingApproval).Whole().ToListAsync(cancellationToken);
        var days = waiting.Select(contract => contract.Terms.Approval.By).OfType<DateOnly>().Where(day => day <= today.AddDays(within)).ToList();
        return (days.Count, days.Count == 0 ? null : days.Min());
    }
}
