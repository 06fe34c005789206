using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Samples;

/// <summary>How long the house lets samples stand, the day that it is counted to, and the zone whose days those are.</summary>
public sealed record LateRule(SampleHabits Habits, DateOnly Today, ClockZone Zone);

/// <summary>Named parts of the samples' table.</summary>
public static class Samples
{
    public static IQueryable<Sample> Unsealed(this IQueryable<Sample> samples, Seal seal)
    {
        var hidden = seal.Samples;
        return seal.IsOfEveryCoffee ? samples.Where(_ => false)
            : hidden.Count == 0 ? samples : samples.Where(sample => !hidden.Contains(sample.Id));
    }

    /// <summary>True once the sample was graded, roasted or put on a table.</summary>
    public static async Task<bool> IsUsedAsync(this LedgerContext db, Sample sample, CancellationToken cancellationToken) =>
        await db.GreenGrades.AnyAsync(grade => grade.SampleId == sample.Id, cancellationToken)
        || await db.SampleRoasts.AnyAsync(roast => roast.SampleId == sample.Id, cancellationToken)
        || await db.CuppingSessions.AnyAsync(session => session.Samples.Any(poured => poured.SampleId == sample.Id), cancellationToken);

    /// <summary>Samples whose last step is this one, whatever was skipped before it.</summary>
    internal static IQueryable<Sample> StandingAt(this IQueryable<Sample> samples, LedgerContext db, SampleStep step) => step switch
    {
        SampleStep.Asked => samples.Where(sample => sample.ReceivedOn == null && sample.SentOn == null),
        SampleStep.OnTheWay => samples.Where(sample => sample.ReceivedOn == null && sample.SentOn != null),
        SampleStep.Received => samples.Undecided(db).Uncupped(db).Unroasted(db).Where(sample => !db.GreenGrades.Any(grade => grade.SampleId == sample.Id)),
        SampleStep.Graded => samples.Undecided(db).Uncupped(db).Unroasted(db).Where(sample => db.GreenGrades.Any(grade => grade.SampleId == sample.Id)),
        SampleStep.Roasted => samples.Undecided(db).Uncupped(db).Where(sample => db.SampleRoasts.Any(roast => roast.SampleId == sample.Id)),
        SampleStep.Cupped => samples.Undecided(db).Where(sample => db.SampleResults.Any(result => result.SampleId == sample.Id)),
        _ => samples.Decided(db),
    };

    /// <summary>
    /// Samples that somebody still wants something of. An offer or type sample whose coffee can no longer be had waits for
    /// nothing, nor does a stock sample that was cupped, nor a pre-shipment sample whose lot was approved by another one after it came or
    /// whose contract has shipped or ended without judging it.
    /// </summary>
    internal static IQueryable<Sample> Wanted(this IQueryable<Sample> samples, LedgerContext db) => samples.Judgeable(db)
        .Where(sample => (sample.Kind != SampleKind.Offer && sample.Kind != SampleKind.Type)
            || !db.Offers.Any(offer => offer.LotId == sample.LotId)
            || db.Offers.Any(offer => offer.LotId == sample.LotId && offer.State == OfferState.OnOffer))
        .Where(sample => sample.Kind != SampleKind.Stock || !db.SampleResults.Any(result => result.SampleId == sample.Id))
        .Where(sample => sample.Kind != SampleKind.PreShipment || !db.Set<SampleApproval>().Any(approval =>
            approval.LotId == sample.LotId && approval.SampleId != sample.Id && approval.Verdict != ApprovalVerdict.Refused && approval.At >= sample.HereSince));

    /// <summary>
    /// Bags that are here and lack this step. Nobody roasts for a sample that lies on a table, was cupped or is no longer wanted; a decision
    /// is awaited of what was cupped.
    /// </summary>
    internal static IQueryable<Sample> WaitingFor(this IQueryable<Sample> samples, LedgerContext db, SampleStep step) => step switch
    {
        SampleStep.Graded => samples.Where(sample => sample.ReceivedOn != null && !db.GreenGrades.Any(grade => grade.SampleId == sample.Id)),
        SampleStep.Roasted => samples.WaitingFor(db, SampleStep.Cupped).Unroasted(db).Undecided(db).Wanted(db),
        SampleStep.Cupped => samples.Where(sample => sample.ReceivedOn != null && !db.CuppingSessions.Any(session =>
            session.Samples.Any(poured => poured.SampleId == sample.Id)
            && (session.ClosedAt == null || session.Sheets.Any(sheet => sheet.SampleId == sample.Id)))),
        SampleStep.Decided => samples.StandingAt(db, SampleStep.Cupped).Wanted(db),
        _ => samples,
    };

    /// <summary>Samples that stand at their step, or at this one, for more days than the house allows.</summary>
    internal static IQueryable<Sample> Late(this IQueryable<Sample> samples, LedgerContext db, LateRule rule, SampleStep? at)
    {
        if (at is { } step)
        {
            return rule.Habits.DaysAt(step) is { } days ? samples.Wanted(db).LastStepBefore(db, step, rule.Today.AddDays(-days), rule.Zone) : samples.Where(_ => false);
        }

        var late = SampleSteps.All.Where(one => rule.Habits.DaysAt(one) is not null)
            .Select(one => db.Samples.AsNoTracking().StandingAt(db, one).Wanted(db).LastStepBefore(db, one, rule.Today.AddDays(-rule.Habits.DaysAt(one)!.Value), rule.Zone).Select(sample => sample.Id))
            .ToList();
        return late.Count == 0 ? samples.Where(_ => false) : samples.Where(Any(late));
    }

    private static System.Linq.Expressions.Expression<Func<Sample, bool>> Any(List<IQueryable<Domain.Id<Sample>>> sets)
    {
        var all = sets.Aggregate((one, other) => one.Concat(other));
        return sample => all.Contains(sample.Id);
    }

    private static IQueryable<Sample> LastStepBefore(this IQueryable<Sample> samples, LedgerContext db, SampleStep step, DateOnly day, ClockZone zone)
    {
        var moment = zone.Begins(day);
        return step switch
        {
            SampleStep.Asked => samples.Where(sample => sample.AskedOn < day),
            SampleStep.OnTheWay => samples.Where(sample => sample.SentOn < day),
            SampleStep.Received => samples.Where(sample => sample.ReceivedOn < day),
            SampleStep.Graded => samples.Where(sample => !db.GreenGrades.Any(grade => grade.SampleId == sample.Id && grade.GradedOn >= day)),
            SampleStep.Roasted => samples.Where(sample => !db.SampleRoasts.Any(roast => roast.SampleId == sample.Id && roast.RoastedAt >= moment)),
            SampleStep.Cupped => samples.Where(sample => !db.SampleResults.Any(result => result.SampleId == sample.Id && result.HeldOn >= day)),
            _ => samples.Where(_ => false),
        };
    }

    private static IQueryable<Sample> Uncupped(this IQueryable<Sample> samples, LedgerContext db) => samples
        .Where(sample => !db.SampleResults.Any(result => result.SampleId == sample.Id));

    private static IQueryable<Sample> Unroasted(this IQueryable<Sample> samples, LedgerContext db) => samples
        .Where(sample => !db.SampleRoasts.Any(roast => roast.SampleId == sample.Id));
}
