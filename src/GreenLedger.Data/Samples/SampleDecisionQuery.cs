using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Samples;

/// <summary>On which record a sample was decided.</summary>
public enum DecidedBy
{
    /// <summary>What the buyer decided about its lot after it came.</summary>
    Decision = 0,

    /// <summary>The approval or refusal of a pre-shipment sample, on its contract.</summary>
    Approval = 1,

    /// <summary>The comparison of an arrival with the approved sample, on the arrival.</summary>
    Comparison = 2,
}

/// <summary>What decided a sample.</summary>
/// <param name="Kind">What kind of record it is.</param>
/// <param name="Record">The identity of that decision, contract or arrival.</param>
/// <param name="On">The day of it, by the clocks of the house.</param>
/// <param name="By">Who decided; for a comparison who closed the session by which both samples were cupped.</param>
/// <param name="Word">What was decided; of a comparison the arrival tells it.</param>
public sealed record SampleDecision(DecidedBy Kind, Guid Record, DateOnly On, Id<Person>? By, string? Word);

/// <summary>
/// Reads what decided samples: a pre-shipment sample its approval or refusal, an arrival sample its comparison with the approved
/// one, any other the decision on its lot. It agrees with <see cref="DecidedSamples"/>, which asks the same of a whole list.
/// </summary>
internal sealed class SampleDecisionQuery(LedgerContext db)
{
    /// <summary>By sample; those that nothing has decided are left out.</summary>
    public async Task<IReadOnlyDictionary<Id<Sample>, SampleDecision>> FindAsync(IReadOnlyCollection<Sample> samples, ClockZone zone, CancellationToken cancellationToken)
    {
        var here = samples.Where(sample => sample.IsReceived).ToLookup(sample => sample.Kind);
        var found = new Dictionary<Id<Sample>, SampleDecision>();
        await ApprovalsAsync([.. here[SampleKind.PreShipment]], found, cancellationToken);
        await ComparisonsAsync([.. here[SampleKind.Arrival]], zone, found, cancellationToken);
        await DecisionsAsync([.. samples.Where(sample => sample.IsReceived && sample.Kind is not SampleKind.PreShipment and not SampleKind.Arrival)], zone, found, cancellationToken);
        return found;
    }

    private async Task DecisionsAsync(List<Sample> samples, ClockZone zone, Dictionary<Id<Sample>, SampleDecision> found, CancellationToken cancellationToken)
    {
        if (samples.Count == 0)
        {
            return;
        }

        var lots = samples.Select(sample => sample.LotId).ToHashSet();
        var decisions = (await db.Decisions.AsNoTracking().Standing().Where(decision => lots.Contains(decision.LotId))
            .Select(decision => new { decision.Id, decision.LotId, decision.At, decision.By, decision.Outcome }).ToListAsync(cancellationToken)).ToLookup(decision => decision.LotId);
        foreach (var sample in samples)
        {
            if (decisions[sample.LotId].Where(one => sample.HereSince is null || one.At >= sample.HereSince).MaxBy(one => one.At) is { } decision)
            {
                found[sample.Id] = new SampleDecision(DecidedBy.Decision, decision.Id.Value, zone.Day(decision.At), decision.By, decision.Outcome.Word());
            }
        }
    }

    private async Task ApprovalsAsync(List<Sample> samples, Dictionary<Id<Sample>, SampleDecision> found, CancellationToken cancellationToken)
    {
        if (samples.Count == 0)
        {
            return;
        }

        var ids = samples.ConvertAll(sample => sample.Id);
        var approvals = await db.Contracts.AsNoTracking()
            .SelectMany(contract => contract.Approvals, (contract, approval) => new { contract.Id, approval.SampleId, approval.Verdict, approval.On, approval.By, approval.At })
            .Where(approval => ids.Contains(approval.SampleId)).OrderBy(approval => approval.At).ToListAsync(cancellationToken);
        foreach (var approval in approvals)
        {
            found[approval.SampleId] = new SampleDecision(DecidedBy.Approval, approval.Id.Value, approval.On, approval.By, approval.Verdict.Word());
        }
    }

    private async Task ComparisonsAsync(List<Sample> samples, ClockZone zone, Dictionary<Id<Sample>, SampleDecision> found, CancellationToken cancellationToken)
    {
        if (samples.Count == 0)
        {
            return;
        }

        var ids = samples.ConvertAll(sample => sample.Id);
        var arrivals = await db.Arrivals.AsNoTracking()
            .Where(arrival => arrival.ApprovedSampleId != null && arrival.ArrivalSampleId != null && ids.Contains(arrival.ArrivalSampleId.Value))
            .Select(arrival => new { arrival.Id, arrival.ReceivedOn, Approved = arrival.ApprovedSampleId!.Value, Drawn = arrival.ArrivalSampleId!.Value }).ToListAsync(cancellationToken);
        var both = arrivals.SelectMany(arrival => new[] { arrival.Approved, arrival.Drawn }).ToHashSet();
        var cupped = (await db.SampleResults.AsNoTracking().Where(result => both.Contains(result.SampleId))
            .Join(db.CuppingSessions, result => result.SessionId, session => session.Id, (result, session) => new { result.SampleId, session.ClosedAt, session.ClosedBy })
            .ToListAsync(cancellationToken)).ToLookup(result => result.SampleId);
        foreach (var arrival in arrivals)
        {
            if (cupped[arrival.Approved].MaxBy(one => one.ClosedAt) is { } approved && cupped[arrival.Drawn].MaxBy(one => one.ClosedAt) is { } drawn)
            {
                var last = approved.ClosedAt > drawn.ClosedAt ? approved : drawn;
                found[arrival.Drawn] = new SampleDecision(DecidedBy.Comparison, arrival.Id.Value, Later(zone.Day(last.ClosedAt!.Value), arrival.ReceivedOn), last.ClosedBy, null);
            }
        }
    }

    private static DateOnly Later(DateOnly one, DateOnly other) => one > other ? one : other;
}
