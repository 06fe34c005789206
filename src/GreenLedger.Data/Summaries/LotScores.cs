using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Summaries;

/// <summary>
/// Panel results on one form, by lot and by sample. A lot's score is that of samples drawn before it arrived: arrival and stock
/// samples tell what came, not what was bought.
/// </summary>
internal sealed class LotScores(LedgerContext db, Id<CuppingForm> formId)
{
    private readonly Dictionary<Id<Sample>, Score> _samples = [];
    private Dictionary<Id<Lot>, List<(DateOnly On, Score Score)>> _lots = [];
    private Dictionary<Id<Lot>, Score> _newest = [];

    public Id<CuppingForm> FormId => formId;

    /// <summary>The newest of each sample.</summary>
    public IReadOnlyDictionary<Id<Sample>, Score> OfSamples => _samples;

    public async Task<LotScores> ReadAsync(CancellationToken cancellationToken)
    {
        var rows = await db.SampleResults.AsNoTracking().Where(result => result.FormId == formId)
            .Join(db.Samples, result => result.SampleId, sample => sample.Id, (result, sample) => new { result.Id, result.LotId, result.SampleId, result.HeldOn, result.Fitted, sample.Kind })
            .OrderBy(row => row.HeldOn).ThenBy(row => row.Id).ToListAsync(cancellationToken);
        rows.ForEach(row => _samples[row.SampleId] = row.Fitted);
        _newest = rows.GroupBy(row => row.LotId).ToDictionary(lot => lot.Key, lot => lot.Last().Fitted);
        _lots = rows.Where(row => row.Kind is not (SampleKind.Arrival or SampleKind.Stock))
            .GroupBy(row => row.LotId).ToDictionary(lot => lot.Key, lot => lot.Select(row => (row.HeldOn, row.Fitted)).ToList());
        return this;
    }

    /// <summary>The newest on or before a day; the first later one where there was none. Null where the lot was not cupped.</summary>
    public Score? When(Id<Lot> lot, DateOnly day) => _lots.TryGetValue(lot, out var found)
        ? found.FindLastIndex(one => one.On <= day) is var at and >= 0 ? found[at].Score : found[0].Score
        : null;

    /// <summary>The newest of any of its samples, those drawn on arrival and from stock too: what the coffee is now, not what was bought.</summary>
    public Score? Now(Id<Lot> lot) => _newest.TryGetValue(lot, out var score) ? score : null;

    public Score? Newest(Id<Lot> lot) => _lots.TryGetValue(lot, out var found) ? found[^1].Score : null;
}
