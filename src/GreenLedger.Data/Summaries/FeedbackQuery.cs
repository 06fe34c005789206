using GreenLedger.Data.Contracts;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Grading;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Summaries;

/// <summary>A sample that a supplier can be told of.</summary>
/// <param name="Score">Of its newest closed session; null where it was not cupped.</param>
public sealed record TellableSample(Id<Sample> Id, string LotRef, string LotName, string LabelCode, SampleKind Kind, DateOnly? ReceivedOn, Score? Score);

/// <summary>Reads what one supplier hears back: nothing is read of others but scores that are counted into quarters.</summary>
public sealed class FeedbackQuery(LedgerContext db)
{
    /// <summary>Samples of a supplier's lots that are here and not sealed, the newest first.</summary>
    /// <param name="supplier">Whose.</param>
    /// <param name="seal">What an open session keeps from the person who asks.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<IReadOnlyList<TellableSample>> SamplesAsync(Id<Supplier> supplier, Seal seal, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(seal);
        var rows = await OfSupplier(supplier, seal).OrderByDescending(row => row.Sample.ReceivedOn).ThenBy(row => row.Sample.LabelCode).Take(200).ToListAsync(cancellationToken);
        var ids = rows.ConvertAll(row => row.Sample.Id);
        var results = await db.SampleResults.AsNoTracking().Where(result => ids.Contains(result.SampleId)).OrderBy(result => result.HeldOn).Select(result => new { result.SampleId, result.Fitted }).ToListAsync(cancellationToken);
        return [.. rows.Select(row => new TellableSample(
            row.Sample.Id, row.Lot.Ref, row.Lot.Name, row.Sample.LabelCode, row.Sample.Kind, row.Sample.ReceivedOn, results.LastOrDefault(result => result.SampleId == row.Sample.Id)?.Fitted))];
    }

    /// <summary>What is told of chosen samples; those of others, or sealed ones, are not found.</summary>
    public async Task<IReadOnlyList<FeedbackSample>> FindAsync(Id<Supplier> supplier, IReadOnlyCollection<Id<Sample>> chosen, Seal seal, CancellationToken cancellationToken)
    {
        var rows = await OfSupplier(supplier, seal).Where(row => chosen.Contains(row.Sample.Id)).OrderBy(row => row.Lot.Ref).ThenBy(row => row.Sample.LabelCode).Take(FeedbackReport.MostSamples).ToListAsync(cancellationToken);
        var told = new List<FeedbackSample>();
        var habits = await db.RecordHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        foreach (var (sample, lot) in rows.Select(row => (row.Sample, row.Lot)))
        {
            var (cup, formId) = await CupAsync(sample.Id, cancellationToken);
            told.Add(new FeedbackSample(
                sample.Id, lot.Ref, lot.Name, lot.CropYear, sample.LabelCode, sample.Kind, sample.ReceivedOn, cup,
                await GreenAsync(sample.Id, cancellationToken),
                await DecisionAsync(supplier, lot.Id, cancellationToken),
                cup is null ? null : SeasonStanding.Of(cup.Score, await SeasonAsync(supplier, formId!.Value, cup.HeldOn, habits, cancellationToken), habits)));
        }

        return told;
    }

    private IQueryable<SampleOfLot> OfSupplier(Id<Supplier> supplier, Seal seal) => db.Samples.AsNoTracking()
        .Where(sample => sample.ReceivedOn != null && !seal.Samples.Contains(sample.Id) && !seal.Lots.Contains(sample.LotId))
        .Join(db.Lots.AsNoTracking().Where(lot => lot.SupplierId == supplier), sample => sample.LotId, lot => lot.Id, (sample, lot) => new SampleOfLot { Sample = sample, Lot = lot });

    private async Task<(FeedbackCup? Cup, Id<CuppingForm>? FormId)> CupAsync(Id<Sample> sample, CancellationToken cancellationToken)
    {
        var cup = await db.NewestCupAsync(sample, cancellationToken);
        return cup is null ? (null, null) : (new FeedbackCup(cup.Result.HeldOn, cup.Form, cup.Result.Fitted, cup.Result.Low, cup.Result.High, cup.Profile), cup.Result.FormId);
    }

    private async Task<FeedbackGreen?> GreenAsync(Id<Sample> sample, CancellationToken cancellationToken)
    {
        var grade = await db.GreenGrades.AsNoTracking().Whole().Where(one => one.SampleId == sample).OrderByDescending(one => one.GradedOn).ThenByDescending(one => one.Id).FirstOrDefaultAsync(cancellationToken);
        var kinds = (await db.GradingStandardsAsync(cancellationToken)).Find(grade?.Scheme)?.Kinds.ToDictionary(kind => kind.Code, kind => kind.Name) ?? [];
        return grade is null ? null : new FeedbackGreen(
            grade.GradedOn, grade.SampleWeight, grade.Moisture, grade.WaterActivity, grade.DensityGramsPerLitre, grade.Category1, grade.Category2, grade.Quakers,
            [.. grade.Defects.Where(defect => defect.Beans > 0).OrderByDescending(defect => defect.Beans).Select(defect => (defect.Kind, kinds.GetValueOrDefault(defect.Kind, defect.Kind), defect.Beans))]);
    }

    /// <summary>The newest that stands, on an offer of this supplier: its own words stay in the house, since they may name others.</summary>
    private async Task<FeedbackDecision?> DecisionAsync(Id<Supplier> supplier, Id<Lot> lot, CancellationToken cancellationToken)
    {
        var decision = await db.Decisions.AsNoTracking().Where(one => one.LotId == lot && one.WithdrawnAt == null && db.Offers.Any(offer => offer.Id == one.OfferId && offer.SupplierId == supplier))
            .OrderByDescending(one => one.At).FirstOrDefaultAsync(cancellationToken);
        if (decision is null)
        {
            return null;
        }

        var failed = FrozenJson.Read<FiguresSnapshot>(decision.Figures).FailedGates;
        var gates = Enum.GetValues<Gate>().Where(gate => gate != Gate.None && failed.Contains(ShortlistWords.Name(gate))).Aggregate(Gate.None, (sum, gate) => sum | gate);
        return new FeedbackDecision((await db.ZoneAsync(cancellationToken)).Day(decision.At), decision.Outcome, gates, FrozenJson.Read<RulesSnapshot>(decision.Rules).Terms.Gates);
    }

    /// <summary>The newest score of each lot of other suppliers in the season up to a day.</summary>
    private async Task<IReadOnlyCollection<SeasonLot>> SeasonAsync(Id<Supplier> supplier, Id<CuppingForm> form, DateOnly until, RecordHabits habits, CancellationToken cancellationToken)
    {
        var from = until.AddMonths(-habits.SeasonMonths);
        var rows = await db.SampleResults.AsNoTracking().Where(result => result.FormId == form && result.HeldOn > from && result.HeldOn <= until)
            .Join(db.Lots.Where(lot => lot.SupplierId != null && lot.SupplierId != supplier), result => result.LotId, lot => lot.Id, (result, lot) => new { result.LotId, result.HeldOn, result.Fitted, lot.SupplierId })
            .ToListAsync(cancellationToken);
        return [.. rows.GroupBy(row => row.LotId).Select(lot => lot.MaxBy(row => row.HeldOn)!).Select(row => new SeasonLot(row.SupplierId!.Value, row.Fitted))];
    }

    private sealed class SampleOfLot
    {
        public required Sample Sample { get; init; }

        public required Lot Lot { get; init; }
    }
}
