using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Stock;

/// <summary>What lies in stock with its age and how it changed, and the house's trend over every lot that was cupped again.</summary>
/// <param name="Form">The cupping form whose scores are compared.</param>
public sealed record AgedStock(IReadOnlyList<AgedLot> Lots, AgeTrend? Trend, IReadOnlyList<AgedScore> Scores, string Form, StockHabits Habits);

/// <summary>Reads scores and moisture by day of what was drawn here, on arrival and from stock: a sample sent before is of the same coffee but did not lie in the warehouse.</summary>
public sealed class AgedStockQuery(LedgerContext db)
{
    private static readonly SampleKind[] FromHere = [SampleKind.Arrival, SampleKind.Stock];

    public async Task<AgedStock> FindAsync(CancellationToken cancellationToken)
    {
        var formId = (await db.QualityBands.AsNoTracking().OfHouseAsync(cancellationToken)).FormId;
        var scores = await ScoresAsync(formId, cancellationToken);
        var moistures = await MoisturesAsync(cancellationToken);
        var byLot = scores.ToLookup(score => score.LotId);
        var countries = await db.Countries.AsNoTracking().ToDictionaryAsync(country => country.Code, cancellationToken);
        var since = await db.Movements.Where(movement => movement.Weighed.Micrograms > 0).GroupBy(movement => movement.LotId).Select(lot => new { lot.Key, On = lot.Min(one => one.On) }).ToDictionaryAsync(lot => lot.Key, lot => lot.On, cancellationToken);
        var held = await db.Holdings.Where(holding => holding.Weighed.Micrograms > 0).GroupBy(holding => holding.LotId).Select(lot => new { lot.Key, Micrograms = lot.Sum(one => one.Weighed.Micrograms) })
            .Join(db.Lots, row => row.Key, lot => lot.Id, (row, lot) => new { lot.Id, lot.Ref, lot.Name, lot.CountryCode, lot.CropYear, row.Micrograms }).OrderBy(row => row.Ref).ToListAsync(cancellationToken);
        var form = await db.CuppingForms.Where(one => one.Id == formId).Select(one => one.Name).SingleOrDefaultAsync(cancellationToken);
        return new AgedStock(
            [
                .. held.Select(lot => new AgedLot(
                    lot.Id, lot.Ref, lot.Name, new Weight(lot.Micrograms),
                    lot.CountryCode is { } code && countries.TryGetValue(code, out var country) ? country.HarvestEnd(lot.CropYear) : null,
                    since[lot.Id], [.. byLot[lot.Id]], [.. moistures[lot.Id]])),
            ],
            AgeTrend.Of(scores), scores, form ?? "", await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken));
    }

    private async Task<IReadOnlyList<AgedScore>> ScoresAsync(Id<Domain.Cupping.CuppingForm> formId, CancellationToken cancellationToken) => (await db.SampleResults.AsNoTracking()
        .Where(result => result.FormId == formId)
        .Join(db.Samples.Where(sample => FromHere.Contains(sample.Kind)), result => result.SampleId, sample => sample.Id, (result, sample) => new { result.LotId, result.HeldOn, result.Fitted, result.Id })
        .OrderBy(row => row.HeldOn).ThenBy(row => row.Id).ToListAsync(cancellationToken))
        .ConvertAll(row => new AgedScore(row.LotId, row.HeldOn, (double)row.Fitted.Points));

    private async Task<ILookup<Id<Lot>, MoistureOn>> MoisturesAsync(CancellationToken cancellationToken) => (await db.GreenGrades.AsNoTracking()
        .Where(grade => grade.Moisture != null)
        .Join(db.Samples.Where(sample => FromHere.Contains(sample.Kind)), grade => grade.SampleId, sample => sample.Id, (grade, sample) => new { grade.LotId, grade.GradedOn, grade.Moisture, grade.Id })
        .OrderBy(row => row.GradedOn).ThenBy(row => row.Id).ToListAsync(cancellationToken))
        .ToLookup(row => row.LotId, row => new MoistureOn(row.GradedOn, row.Moisture!.Value));
}
