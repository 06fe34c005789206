using GreenLedger.Data.Cupping;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Contracts;

/// <summary>Reads what was found of one sample.</summary>
public static class SampleFindingsReading
{
    /// <summary>The newest result and the newest grade of a sample.</summary>
    public static async Task<SampleFindings> FindingsAsync(this LedgerContext db, Sample sample, Weight left, CancellationToken cancellationToken) => new(
        sample,
        left,
        await db.NewestCupAsync(sample.Id, cancellationToken),
        await db.GreenGrades.AsNoTracking().Whole().OfSample(sample.Id).FirstOrDefaultAsync(cancellationToken));

    /// <summary>What its newest closed session says of a sample; null where it was not cupped.</summary>
    public static async Task<SampleCup?> NewestCupAsync(this LedgerContext db, Id<Sample> sample, CancellationToken cancellationToken)
    {
        var result = await db.SampleResults.AsNoTracking().Where(one => one.SampleId == sample).OrderByDescending(one => one.HeldOn).ThenByDescending(one => one.Id).FirstOrDefaultAsync(cancellationToken);
        if (result is null)
        {
            return null;
        }

        var session = await db.CuppingSessions.AsNoTracking().Closed().Whole().SingleAsync(one => one.Id == result.SessionId, cancellationToken);
        var descriptive = session.DescriptiveFormId is { } form ? (await db.DescriptiveForms.AsNoTracking().SingleAsync(one => one.Id == form, cancellationToken)).Rules : null;
        return SampleProfile.Of(session, descriptive).FirstOrDefault(one => one.SampleId == sample) is { } profile ? new SampleCup(result, session.Form.Name, profile) : null;
    }
}
