using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Choosing;

/// <summary>Which families of the house's descriptors were tasted in lots.</summary>
public sealed class FlavourQuery(LedgerContext db)
{
    /// <summary>By lot, the families of which at least two cuppers of closed sessions said a word, or the only one who cupped it.</summary>
    public async Task<ILookup<Id<Lot>, string>> OfLotsAsync(IReadOnlyCollection<Id<Lot>> lots, CancellationToken cancellationToken)
    {
        var words = (await db.Descriptors.AsNoTracking().ToListAsync(cancellationToken)).ToLookup(word => word.Word, word => word.Family, StringComparer.OrdinalIgnoreCase);
        var closed = db.CuppingSessions.Closed().Select(session => session.Id);
        var sheets = await db.ScoreSheets.AsNoTracking().Where(sheet => closed.Contains(sheet.SessionId))
            .Join(db.Samples.Where(sample => lots.Contains(sample.LotId)), sheet => sheet.SampleId, sample => sample.Id, (sheet, sample) => new { sample.LotId, Sheet = sheet })
            .ToListAsync(cancellationToken);
        return sheets.GroupBy(row => row.LotId)
            .SelectMany(lot => lot.SelectMany(row => row.Sheet.Descriptors.SelectMany(word => words[word]).Select(family => (Family: family, row.Sheet.CupperKey)))
                .GroupBy(said => said.Family, StringComparer.OrdinalIgnoreCase)
                .Where(family => family.Select(said => said.CupperKey).Distinct().Count() >= Math.Min(2, lot.Select(row => row.Sheet.CupperKey).Distinct().Count()))
                .Select(family => (Lot: lot.Key, Family: family.Key)))
            .ToLookup(pair => pair.Lot, pair => pair.Family);
    }

    /// <summary>The families that the house sorts its descriptors into.</summary>
    public async Task<IReadOnlySet<string>> FamiliesAsync(CancellationToken cancellationToken) =>
        (await db.Descriptors.Where(word => !word.IsRetired).Select(word => word.Family).Distinct().ToListAsync(cancellationToken)).ToHashSet(StringComparer.OrdinalIgnoreCase);
}
