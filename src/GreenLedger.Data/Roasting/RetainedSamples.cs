using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Roasting;

/// <summary>Reads how much green coffee of samples is still kept.</summary>
public static class RetainedSamples
{
    /// <summary>What is left of each sample that is here.</summary>
    public static async Task<IReadOnlyDictionary<Id<Sample>, Weight>> LeftOfAsync(this LedgerContext db, IReadOnlyCollection<Sample> samples, CancellationToken cancellationToken)
    {
        var ids = samples.Select(sample => sample.Id).ToList();
        var roasts = await db.SampleRoasts.AsNoTracking().Where(roast => ids.Contains(roast.SampleId)).ToListAsync(cancellationToken);
        return samples.Where(sample => sample.IsReceived).ToDictionary(sample => sample.Id, sample => RetainedSample.Left(sample, roasts)!.Value);
    }
}
