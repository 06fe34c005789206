using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Trace;

/// <summary>A sample of a lot, with its newest grade.</summary>
public sealed record GradedSample(Sample Sample, GreenGrade? Grade);

/// <summary>What was found of a lot: its samples, the newest first, the way of the newest, and the results of closed sessions.</summary>
public sealed record LotFindings(Id<Lot> LotId, IReadOnlyList<GradedSample> Samples, SampleOnItsWay NewestWay, IReadOnlyList<LotResultRow> Results);

/// <summary>Reads what the rooms of samples, grading and cupping know of a lot.</summary>
public sealed class LotFindingsQuery(LedgerContext db, SessionQuery sessions, SampleWayQuery ways)
{
    public async Task<LotFindings> FindAsync(Id<Lot> lotId, DateOnly today, CancellationToken cancellationToken)
    {
        var samples = await db.Samples.AsNoTracking().Where(sample => sample.LotId == lotId)
            .OrderByDescending(sample => sample.ReceivedOn ?? sample.SentOn ?? sample.AskedOn).ThenBy(sample => sample.LabelCode).ToListAsync(cancellationToken);
        var grades = await db.GreenGrades.AsNoTracking().Where(grade => grade.LotId == lotId)
            .OrderBy(grade => grade.GradedOn).ToListAsync(cancellationToken);
        return new LotFindings(
            lotId,
            [.. samples.Select(sample => new GradedSample(sample, grades.LastOrDefault(grade => grade.SampleId == sample.Id)))],
            samples.Count == 0 ? SampleOnItsWay.Nowhere : await ways.FindAsync(samples[0], today, cancellationToken),
            await sessions.OfLotAsync(lotId, cancellationToken));
    }
}
