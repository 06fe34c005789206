using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Samples;

/// <summary>Finds the lots and samples that the names of a table that the house kept stand for.</summary>
public sealed class KnownSampleQuery(LedgerContext db)
{
    private const int AtOnce = 500;

    /// <summary>
    /// A name is a sample's label code, else what <see cref="NamedLot"/> says. Names that stand for nothing are left out, and
    /// those that may stand for several lots come with a sentence instead.
    /// </summary>
    public async Task<KnownNames> FindAsync(IEnumerable<string> names, CancellationToken cancellationToken)
    {
        var known = new Dictionary<string, KnownSample>(StringComparer.OrdinalIgnoreCase);
        var unclear = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        var all = names.Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        foreach (var some in all.Chunk(AtOnce))
        {
            await FindSamplesAsync(some, known, cancellationToken);
        }

        var lots = await LotsAsync([.. all.Where(name => !known.ContainsKey(name)).Select(NamedLot.KeyOf)], cancellationToken);
        var found = new List<(string Name, Id<Lot> Lot)>();
        foreach (var name in all.Where(name => !known.ContainsKey(name)))
        {
            var meant = NamedLot.Meant(name, lots[NamedLot.KeyOf(name)].ToList());
            if (meant.Count > 1)
            {
                unclear.Add(name, NamedLot.SeveralSentence(name, meant));
            }
            else if (meant is [var lot])
            {
                found.Add((name, lot.Id));
            }
        }

        foreach (var some in found.Chunk(AtOnce))
        {
            await TakeNewestSamplesAsync(some, known, cancellationToken);
        }

        return new KnownNames(known, unclear);
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

    /// <summary>The lots that one of the keys may mean. All lots pass by once, since no column holds their folded references.</summary>
    private async Task<ILookup<string, NamedLot>> LotsAsync(HashSet<string> keys, CancellationToken cancellationToken)
    {
        var found = new List<(string Key, NamedLot Lot)>();
        if (keys.Count > 0)
        {
            await foreach (var lot in db.Lots.AsNoTracking().OrderBy(lot => lot.Id).Select(lot => new { lot.Id, lot.Ref, lot.Name, lot.IcoMark }).AsAsyncEnumerable().WithCancellation(cancellationToken))
            {
                var named = new NamedLot(lot.Id, lot.Ref, lot.Name, lot.IcoMark);
                found.AddRange(named.Keys.Distinct().Where(keys.Contains).Select(key => (key, named)));
            }
        }

        return found.ToLookup(pair => pair.Key, pair => pair.Lot);
    }

    private async Task TakeNewestSamplesAsync((string Name, Id<Lot> Lot)[] found, Dictionary<string, KnownSample> known, CancellationToken cancellationToken)
    {
        var ids = found.Select(one => one.Lot).ToList();
        var samples = (await db.Samples.Where(sample => ids.Contains(sample.LotId) && sample.ReceivedOn != null).OrderByDescending(sample => sample.ReceivedOn).ToListAsync(cancellationToken))
            .ToLookup(sample => sample.LotId);
        foreach (var (name, lot) in found)
        {
            known[name] = new KnownSample(lot, samples[lot].FirstOrDefault());
        }
    }
}
