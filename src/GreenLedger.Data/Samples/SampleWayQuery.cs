using System.Globalization;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Samples;

/// <summary>Reads across the rooms how far a sample has come: each step with its day, who, and what was found.</summary>
public sealed class SampleWayQuery(LedgerContext db)
{
    private static CultureInfo Reader => CultureInfo.InvariantCulture;

    public async Task<IReadOnlyList<SampleStop>> FindAsync(Sample sample, DateOnly today, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(sample);
        var steps = new List<(SampleStep Step, DateOnly? On, Id<Person>? By, string? Figure)>
        {
            (SampleStep.Asked, sample.AskedOn, sample.AskedBy, Grams(sample.AskedWeight)),
            (SampleStep.OnTheWay, sample.SentOn, sample.SentBy, sample.Courier),
            (SampleStep.Received, sample.ReceivedOn, sample.ReceivedBy, Grams(sample.Weight)),
        };
        if (sample.IsReceived)
        {
            steps.AddRange([
                await GradedAsync(sample, cancellationToken),
                await RoastedAsync(sample, cancellationToken),
                await CuppedAsync(sample, cancellationToken),
                await DecidedAsync(sample, cancellationToken)]);
        }

        var people = steps.Select(step => step.By).OfType<Id<Person>>().Distinct().ToList();
        var names = await db.People.Where(person => people.Contains(person.Id)).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
        var taken = steps.Where(step => step.On is not null)
            .Select(step => new StepTaken(step.Step, step.On!.Value, step.By is { } by ? names.GetValueOrDefault(by) : null, step.Figure));
        return SampleWay.Of([.. taken], await db.SampleHabits.AsNoTracking().OfHouseAsync(cancellationToken), today, await db.Samples.Wanted(db).AnyAsync(one => one.Id == sample.Id, cancellationToken));
    }

    private async Task<(SampleStep, DateOnly?, Id<Person>?, string?)> GradedAsync(Sample sample, CancellationToken cancellationToken)
    {
        var grade = await db.GreenGrades.AsNoTracking().Where(one => one.SampleId == sample.Id).OrderByDescending(one => one.GradedOn).ThenByDescending(one => one.Id).FirstOrDefaultAsync(cancellationToken);
        return (SampleStep.Graded, grade?.GradedOn, grade?.By, grade?.Moisture?.ToString());
    }

    private async Task<(SampleStep, DateOnly?, Id<Person>?, string?)> RoastedAsync(Sample sample, CancellationToken cancellationToken)
    {
        var roast = await db.SampleRoasts.AsNoTracking().Where(one => one.SampleId == sample.Id).OrderByDescending(one => one.RoastedAt).FirstOrDefaultAsync(cancellationToken);
        return (SampleStep.Roasted, Day(roast?.RoastedAt), roast?.By, roast?.Loss is { } loss ? loss.Points.ToString("0.0", Reader) + " % lost" : null);
    }

    private async Task<(SampleStep, DateOnly?, Id<Person>?, string?)> CuppedAsync(Sample sample, CancellationToken cancellationToken)
    {
        var result = await db.SampleResults.AsNoTracking().Where(one => one.SampleId == sample.Id).OrderByDescending(one => one.HeldOn).ThenByDescending(one => one.Id)
            .Select(one => new { one.HeldOn, one.Fitted, one.SessionId }).FirstOrDefaultAsync(cancellationToken);
        var by = result is null ? null : await db.CuppingSessions.Where(session => session.Id == result.SessionId).Select(session => session.ClosedBy).SingleOrDefaultAsync(cancellationToken);
        return (SampleStep.Cupped, result?.HeldOn, by, result?.Fitted.Points.ToString("0.00", Reader));
    }

    private async Task<(SampleStep, DateOnly?, Id<Person>?, string?)> DecidedAsync(Sample sample, CancellationToken cancellationToken)
    {
        var decision = await db.Decisions.AsNoTracking()
            .Where(one => one.LotId == sample.LotId && one.WithdrawnAt == null && (sample.HereSince == null || one.At >= sample.HereSince))
            .OrderByDescending(one => one.At).FirstOrDefaultAsync(cancellationToken);
        return (SampleStep.Decided, Day(decision?.At), decision?.By, decision?.Outcome.Word());
    }

    private static DateOnly? Day(DateTimeOffset? moment) => moment is { } at ? DateOnly.FromDateTime(at.UtcDateTime) : null;

    private static string? Grams(Domain.Measures.Weight? weight) => weight is { } some ? some.Grams.ToString("#,0.#", Reader) + " g" : null;
}
