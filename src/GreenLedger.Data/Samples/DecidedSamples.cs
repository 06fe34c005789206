using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Data.Samples;

/// <summary>Which samples are decided: by the decision on the lot, by approval or refusal, or by the comparison of an arrival.</summary>
internal static class DecidedSamples
{
    public static IQueryable<Sample> Decided(this IQueryable<Sample> samples, LedgerContext db) => samples.Where(sample => sample.ReceivedOn != null
        && ((sample.Kind == SampleKind.PreShipment && db.Set<SampleApproval>().Any(approval => approval.SampleId == sample.Id))
            || (sample.Kind == SampleKind.Arrival && db.Arrivals.Any(arrival => arrival.ArrivalSampleId == sample.Id
                && db.SampleResults.Any(result => result.SampleId == sample.Id)
                && db.SampleResults.Any(result => result.SampleId == arrival.ApprovedSampleId)))
            || (sample.Kind != SampleKind.PreShipment && sample.Kind != SampleKind.Arrival && db.Decisions.Any(decision =>
                decision.LotId == sample.LotId && decision.WithdrawnAt == null && (sample.HereSince == null || decision.At >= sample.HereSince)))));

    /// <summary>Those that are here and wait for what decides them.</summary>
    public static IQueryable<Sample> Undecided(this IQueryable<Sample> samples, LedgerContext db)
    {
        var decided = db.Samples.Decided(db);
        return samples.Where(sample => sample.ReceivedOn != null && !decided.Any(one => one.Id == sample.Id));
    }
}
