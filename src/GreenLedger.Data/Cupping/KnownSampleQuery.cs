using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Cupping;

/// <summary>Finds the lots and samples that the names of a file of past results stand for.</summary>
public sealed class KnownSampleQuery(LedgerContext db)
{
    private const int AtOnce = 500;

    /// <summary>
    /// A name is a sample's label code, else a lot's reference, else a lot's name that only one lot has. Names that
    /// stand for nothing are left out.
    /// </summary>
    public async Task<IReadOnlyDictionary<string, KnownSample>> FindAsync(IEnumerable<string> names, CancellationToken cancellationToken)
    {
        var known = new Dictionary<string, KnownSample>(StringComparer.OrdinalIgnoreCase);
        foreach (var some in names.Distinct(StringComparer.OrdinalIgnoreCase).Chunk(AtOnce))
        {
            await FindSamplesAsync(some, known, cancellationToken);
            await FindLotsAsync([.. some.Where(name => !known.ContainsKey(name))], known, cancellationToken);
        }

        return known;
    }

    private async Task FindSamplesAsync(string[] names, Dictionary<string, KnownSample> known, CancellationToken cancellationToken)
    {
        var labels = names.Select(name => name.Trim().ToUpperInvariant()).ToList();
        var samples = await db.Samples.Where(sample => labels.Contains(sample.LabelCode) && sample.ReceivedOn != null).ToListAsync(cancellationToken);
        foreach (var name in names)
        {
            if (samples.Find(sample => string.Equals(sample.LabelCode, name.Trim(), StringComparison.OrdinalIgnoreCase)) is { } sample)
            {
                known[name] = new KnownSample(sample.LotId, sample);
            }
        }
    }

    private async Task FindLotsAsync(string[] names, Dictionary<string, KnownSample> known, CancellationToken cancellationToken)
    {
        var lots = await db.Lots.AsNoTracking()
            .Where(lot => names.Contains(lot.Ref) || names.Contains(lot.Name))
            .Select(lot => new { lot.Id, lot.Ref, lot.Name })
            .ToListAsync(cancellationToken);
        var ids = lots.Select(lot => lot.Id).ToList();
        var samples = (await db.Samples.Where(sample => ids.Contains(sample.LotId) && sample.ReceivedOn != null).OrderByDescending(sample => sample.ReceivedOn).ToListAsync(cancellationToken))
            .ToLookup(sample => sample.LotId);
        foreach (var name in names)
        {
            var byRef = lots.Where(lot => Same(lot.Ref, name)).ToList();
            var matches = byRef.Count > 0 ? byRef : [.. lots.Where(lot => Same(lot.Name, name))];
            if (matches is [var match])
            {
                known[name] = new KnownSample(match.Id, samples[match.Id].FirstOrDefault());
            }
        }
    }

    private static bool Same(string one, string other) => SearchText.Of(one) == SearchText.Of(other);
}
