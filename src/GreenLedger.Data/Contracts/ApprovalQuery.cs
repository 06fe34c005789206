using GreenLedger.Data.Cupping;
using GreenLedger.Data.Roasting;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Contracts;

/// <summary>Reads what waits for approval.</summary>
public sealed class ApprovalQuery(LedgerContext db)
{
    /// <summary>Pre-shipment samples of the contract's lots that are here and not judged, the oldest first, each beside the offer samples of its lot.</summary>
    /// <param name="contract">Whole.</param>
    /// <param name="seal">What an open session keeps from the reader.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyList<ApprovalCase>> ToJudgeAsync(Contract contract, Seal seal, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(contract);
        ArgumentNullException.ThrowIfNull(seal);
        var lots = contract.Lots.Where(lot => !contract.IsApproved(lot.LotId)).Select(lot => lot.LotId).ToList();
        var judged = contract.Approvals.Select(approval => approval.SampleId).ToList();
        var samples = await db.Samples.AsNoTracking()
            .Where(sample => (sample.Kind == SampleKind.PreShipment || sample.Kind == SampleKind.Offer) && sample.ReceivedOn != null && lots.Contains(sample.LotId) && !judged.Contains(sample.Id))
            .OrderBy(sample => sample.ReceivedOn).ThenBy(sample => sample.LabelCode).ToListAsync(cancellationToken);
        var left = await db.LeftOfAsync(samples, cancellationToken);
        var names = contract.Terms.Lots.ToDictionary(lot => lot.LotId, lot => lot.Name);
        var cases = new List<ApprovalCase>();
        foreach (var sample in samples.Where(one => one.Kind == SampleKind.PreShipment))
        {
            var isSealed = seal.Covers(sample.Id.Value) || seal.Covers(sample.LotId.Value);
            var shown = isSealed ? [] : samples.Where(one => one.Kind == SampleKind.Offer && one.LotId == sample.LotId).Reverse().ToList();
            var offered = new List<SampleFindings>();
            foreach (var offer in shown)
            {
                offered.Add(await db.FindingsAsync(offer, left[offer.Id], cancellationToken));
            }

            cases.Add(new ApprovalCase(
                names[sample.LotId],
                isSealed ? new SampleFindings(sample, left[sample.Id], null, null) : await db.FindingsAsync(sample, left[sample.Id], cancellationToken),
                offered,
                isSealed));
        }

        return cases;
    }

    /// <summary>The label codes of judged samples.</summary>
    public async Task<IReadOnlyDictionary<Id<Sample>, string>> CodesAsync(Contract contract, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var ids = contract.Approvals.Select(approval => approval.SampleId).ToList();
        return await db.Samples.AsNoTracking().Where(sample => ids.Contains(sample.Id)).ToDictionaryAsync(sample => sample.Id, sample => sample.LabelCode, cancellationToken);
    }

    /// <summary>The refused samples that a sample replaces, and those that replaced it, over all contracts: each with its label code.</summary>
    public async Task<(IReadOnlyList<(Id<Sample> Id, string Code)> Replaced, IReadOnlyList<(Id<Sample> Id, string Code)> By)> ReplacedAsync(Sample sample, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(sample);
        var contracts = sample.Kind == SampleKind.PreShipment
            ? await db.Contracts.AsNoTracking().Where(contract => contract.Approvals.Any(approval => approval.LotId == sample.LotId)).OrderBy(contract => contract.Id).Whole().ToListAsync(cancellationToken)
            : [];
        var replaced = contracts.Select(contract => contract.Replaced(sample)?.SampleId).OfType<Id<Sample>>().Distinct().ToList();
        var by = contracts.Select(contract => contract.Replacement(sample.Id)?.SampleId).OfType<Id<Sample>>().Distinct().ToList();
        var codes = await db.Samples.AsNoTracking().Where(one => replaced.Contains(one.Id) || by.Contains(one.Id)).ToDictionaryAsync(one => one.Id, one => one.LabelCode, cancellationToken);
        return (replaced.ConvertAll(id => (id, codes[id])), by.ConvertAll(id => (id, codes[id])));
    }

    /// <summary>How many signed contracts wait for an approval whose day is near or past, and the nearest of those days.</summary>
    public async Task<(int Count, DateOnly? Next)> DueAsync(DateOnly today, int within, CancellationToken cancellationToken)
    {
        var waiting = await db.Contracts.AsNoTracking().Where(contract => contract.Goods == GoodsState.AwaitingApproval).Whole().ToListAsync(cancellationToken);
        var days = waiting.Select(contract => contract.Terms.Approval.By).OfType<DateOnly>().Where(day => day <= today.AddDays(within)).ToList();
        return (days.Count, days.Count == 0 ? null : days.Min());
    }
}
