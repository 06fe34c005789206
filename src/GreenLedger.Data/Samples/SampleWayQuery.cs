using System.Globalization;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Samples;

/// <summary>A sample's way.</summary>
/// <param name="Stops">Each step: its day, who, and what was found.</param>
/// <param name="Decided">What decided it; null while nothing has.</param>
/// <param name="Unjudged">What happened to the goods of a pre-shipment sample that nobody judged in time; else null.</param>
public sealed record SampleOnItsWay(IReadOnlyList<SampleStop> Stops, SampleDecision? Decided, SampleUnjudged? Unjudged)
{
    public static SampleOnItsWay Nowhere { get; } = new([], null, null);
}

/// <summary>Reads across the rooms how far a sample has come: each step with its day, who, and what was found.</summary>
public sealed class SampleWayQuery(LedgerContext db)
{
    private static CultureInfo Reader => CultureInfo.InvariantCulture;

    public async Task<SampleOnItsWay> FindAsync(Sample sample, DateOnly today, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(sample);
        var zone = await db.ZoneAsync(cancellationToken);
        var decided = await DecidedAsync(sample, zone, cancellationToken);
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
                await RoastedAsync(sample, zone, cancellationToken),
                await CuppedAsync(sample, cancellationToken),
                (SampleStep.Decided, decided?.On, decided?.By, decided?.Word)]);
        }

        var people = steps.Select(step => step.By).OfType<Id<Person>>().Distinct().ToList();
        var names = await db.People.Where(person => people.Contains(person.Id)).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
        var taken = steps.Where(step => step.On is not null)
            .Select(step => new StepTaken(step.Step, step.On!.Value, step.By is { } by ? names.GetValueOrDefault(by) : null, step.Figure));
        var isWanted = await db.Samples.Wanted(db).AnyAsync(one => one.Id == sample.Id, cancellationToken);
        return new SampleOnItsWay(
            SampleWay.Of([.. taken], await db.SampleHabits.AsNoTracking().OfHouseAsync(cancellationToken), today, isWanted),
            decided,
            await db.UnjudgedAsync(sample, cancellationToken));
    }

    private async Task<(SampleStep, DateOnly?, Id<Person>?, string?)> GradedAsync(Sample sample, CancellationToken cancellationToken)
    {
        var grade = await db.GreenGrades.AsNoTracking().Where(one => one.SampleId == sample.Id).OrderByDescending(one => one.GradedOn).ThenByDescending(one => one.Id).FirstOrDefaultAsync(cancellationToken);
        return (SampleStep.Graded, grade?.GradedOn, grade?.By, grade?.Moisture?.ToString());
    }

    private async Task<(SampleStep, DateOnly?, Id<Person>?, string?)> RoastedAsync(Sample sample, ClockZone zone, CancellationToken cancellationToken)
    {
        var roast = await db.SampleRoasts.AsNoTracking().Where(one => one.SampleId == sample.Id).OrderByDescending(one => one.RoastedAt).FirstOrDefaultAsync(cancellationToken);
        return (SampleStep.Roasted, roast is null ? null : zone.Day(roast.RoastedAt), roast?.By, roast?.Loss is { } loss ? loss.Points.ToString("0.0", Reader) + " % lost" : null);
    }

    private async Task<(SampleStep, DateOnly?, Id<Person>?, string?)> CuppedAsync(Sample sample, CancellationToken cancellationToken)
    {
        var result = await db.SampleResults.AsNoTracking().Where(one => one.SampleId == sample.Id).OrderByDescending(one => one.HeldOn).ThenByDescending(one => one.Id)
            .Select(one => new { one.HeldOn, one.Fitted, one.SessionId }).FirstOrDefaultAsync(cancellationToken);
        var by = result is null ? null : await db.CuppingSessions.Where(session => session.Id == result.SessionId).Select(session => session.ClosedBy).SingleOrDefaultAsync(cancellationToken);
        return (SampleStep.Cupped, result?.HeldOn, by, result?.Fitted.Points.ToString("0.00", Reader));
    }

    private async Task<SampleDecision?> DecidedAsync(Sample sample, ClockZone zone, CancellationToken cancellationToken)
    {
        var decided = (await new SampleDecisionQuery(db).FindAsync([sample], zone, cancellationToken)).GetValueOrDefault(sample.Id);
        if (decided is not { Kind: DecidedBy.Comparison } || await new ArrivalCaseQuery(db).FindAsync(new Id<Arrival>(decided.Record), cancellationToken) is not { } found)
        {
            return decided;
        }

        return decided with { Word = Word(found.Quality().Outcome) };
    }

    private static string Word(ArrivalOutcome outcome) => outcome switch
    {
        ArrivalOutcome.Matches => "matches the approved one",
        ArrivalOutcome.Short => "short of the approved one",
        _ => "compared, neither shown",
    };

    private static string? Grams(Weight? weight) => weight is { } some ? some.Grams.ToString("#,0.#", Reader) + " g" : null;
}
