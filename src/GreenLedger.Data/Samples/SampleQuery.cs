using GreenLedger.Data.Cupping;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Samples;

/// <summary>What a list of samples is narrowed to and sorted by.</summary>
/// <param name="Waiting">Only bags that are here and wait for this step: graded, roasted, cupped, or decided, which follows the cup.</param>
/// <param name="At">Only samples that stand at this step.</param>
/// <param name="LateBy">Only samples that stand at their step for longer than the house allows.</param>
/// <param name="Only">Only these, as far as the rest fits them.</param>
/// <param name="WithExpected">Also those that are not here yet, which nobody can grade or cup.</param>
public sealed record SampleFilter(
    string? Text = null, SampleKind? Kind = null, SampleStep? Waiting = null, string? Sort = null, SampleStep? At = null, LateRule? LateBy = null, bool WithExpected = false,
    IReadOnlyCollection<Id<Sample>>? Only = null);

/// <summary>One sample of a list, with the lot that it stands for and what the later rooms found.</summary>
/// <param name="Taken">The steps that happened, without who.</param>
/// <param name="IsWanted">False where nothing more is wanted of it.</param>
public sealed record SampleRow(
    Id<Sample> Id,
    string LabelCode,
    SampleKind Kind,
    DateOnly? ReceivedOn,
    Weight? Weight,
    Id<Lot> LotId,
    string LotRef,
    string LotName,
    DateOnly? GradedOn,
    DateOnly? CuppedOn,
    Score? Fitted,
    IReadOnlyList<StepTaken> Taken,
    bool IsWanted,
    string? Note,
    int Version)
{
    /// <summary>The step at which it stands.</summary>
    public StepTaken? Stands => Taken.MaxBy(step => step.Step);
}

/// <summary>Lists of samples for the sample room and for laying out a session; samples sealed for the reader are left out.</summary>
public sealed class SampleQuery(LedgerContext db)
{
    public Task<int> CountAsync(SampleFilter filter, Seal seal, CancellationToken cancellationToken) =>
        Filtered(filter, seal).CountAsync(cancellationToken);

    public async Task<IReadOnlyList<SampleRow>> ListAsync(SampleFilter filter, Seal seal, int skip, int take, CancellationToken cancellationToken)
    {
        var rows = await Sorted(Filtered(filter, seal), filter.Sort).Skip(skip).Take(take)
            .Select(pair => new
            {
                pair.Sample,
                pair.Lot.Ref,
                pair.Lot.Name,
                GradedOn = db.GreenGrades.Where(grade => grade.SampleId == pair.Sample.Id).Max(grade => (DateOnly?)grade.GradedOn),
                RoastedAt = db.SampleRoasts.Where(roast => roast.SampleId == pair.Sample.Id).Max(roast => (DateTimeOffset?)roast.RoastedAt),
                Result = db.SampleResults.Where(result => result.SampleId == pair.Sample.Id)
                    .OrderByDescending(result => result.HeldOn).ThenByDescending(result => result.Id)
                    .Select(result => new { result.HeldOn, result.Fitted.Millionths })
                    .FirstOrDefault(),
                IsWanted = db.Samples.Wanted(db).Any(sample => sample.Id == pair.Sample.Id),
            })
            .ToListAsync(cancellationToken);
        var zone = await db.ZoneAsync(cancellationToken);
        var decided = await new SampleDecisionQuery(db).FindAsync([.. rows.Select(row => row.Sample)], zone, cancellationToken);
        return [.. rows.Select(row => new SampleRow(
            row.Sample.Id,
            row.Sample.LabelCode,
            row.Sample.Kind,
            row.Sample.ReceivedOn,
            row.Sample.Weight,
            row.Sample.LotId,
            row.Ref,
            row.Name,
            row.GradedOn,
            row.Result?.HeldOn,
            row.Result is { } result ? new Score(result.Millionths) : null,
            [.. Taken(row.Sample, row.GradedOn, row.RoastedAt is { } roasted ? zone.Day(roasted) : null, row.Result?.HeldOn, decided.GetValueOrDefault(row.Sample.Id)?.On)],
            row.IsWanted,
            row.Sample.Note,
            row.Sample.Version))];
    }

    /// <summary>How many samples stand at each step for longer than the house allows; steps without any are left out.</summary>
    public async Task<IReadOnlyDictionary<SampleStep, int>> LateAsync(LateRule rule, Seal seal, CancellationToken cancellationToken)
    {
        var late = new Dictionary<SampleStep, int>();
        foreach (var step in SampleSteps.All.Where(step => rule.Habits.DaysAt(step) is not null))
        {
            var count = await CountAsync(new SampleFilter(At: step, LateBy: rule, WithExpected: true), seal, cancellationToken);
            if (count > 0)
            {
                late[step] = count;
            }
        }

        return late;
    }

    private static IEnumerable<StepTaken> Taken(Sample sample, DateOnly? graded, DateOnly? roasted, DateOnly? cupped, DateOnly? decided)
    {
        (SampleStep Step, DateOnly? On)[] steps =
        [
            (SampleStep.Asked, sample.AskedOn), (SampleStep.OnTheWay, sample.SentOn), (SampleStep.Received, sample.ReceivedOn),
            (SampleStep.Graded, graded), (SampleStep.Roasted, roasted), (SampleStep.Cupped, cupped), (SampleStep.Decided, decided),
        ];
        return steps.Where(step => step.On is not null).Select(step => new StepTaken(step.Step, step.On!.Value));
    }

    private IQueryable<SampleOfLot> Filtered(SampleFilter filter, Seal seal)
    {
        var found = db.Samples.AsNoTracking().Unsealed(seal);
        if (!filter.WithExpected)
        {
            found = found.Where(sample => sample.ReceivedOn != null);
        }

        if (filter.Kind is { } kind)
        {
            found = found.Where(sample => sample.Kind == kind);
        }

        if (filter.Only is { } only)
        {
            found = found.Where(sample => only.Contains(sample.Id));
        }

        if (filter.At is { } step)
        {
            found = found.StandingAt(db, step);
        }

        if (filter.LateBy is { } rule)
        {
            found = found.Late(db, rule, filter.At);
        }

        found = filter.Waiting is { } waiting ? found.WaitingFor(db, waiting) : found;
        return Named(found.Join(db.Lots, sample => sample.LotId, lot => lot.Id, (sample, lot) => new SampleOfLot { Sample = sample, Lot = lot }), filter.Text);
    }

    private static IQueryable<SampleOfLot> Named(IQueryable<SampleOfLot> samples, string? text)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return samples;
        }

        var label = text.Trim().ToUpperInvariant();
        var folded = SearchText.Of(text);
        return samples.Where(pair => pair.Sample.LabelCode.Contains(label) || pair.Lot.SearchText.Contains(folded));
    }

    private static IQueryable<SampleOfLot> Sorted(IQueryable<SampleOfLot> samples, string? sort) => sort switch
    {
        "label" => samples.OrderBy(pair => pair.Sample.LabelCode),
        "-label" => samples.OrderByDescending(pair => pair.Sample.LabelCode),
        "lot" => samples.OrderBy(pair => pair.Lot.Name).ThenBy(pair => pair.Sample.LabelCode),
        "-lot" => samples.OrderByDescending(pair => pair.Lot.Name).ThenBy(pair => pair.Sample.LabelCode),
        "received" => samples.OrderBy(pair => pair.Sample.ReceivedOn ?? pair.Sample.SentOn ?? pair.Sample.AskedOn).ThenBy(pair => pair.Sample.LabelCode),
        _ => samples.OrderByDescending(pair => pair.Sample.ReceivedOn ?? pair.Sample.SentOn ?? pair.Sample.AskedOn).ThenBy(pair => pair.Sample.LabelCode),
    };

    private sealed class SampleOfLot
    {
        public required Sample Sample { get; init; }

        public required Lot Lot { get; init; }
    }
}
