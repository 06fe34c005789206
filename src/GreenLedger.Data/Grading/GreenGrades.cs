using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Grading;

/// <summary>Named parts of the grades' table.</summary>
public static class GreenGrades
{
    /// <summary>The grade with its counts and screens.</summary>
    public static IQueryable<GreenGrade> Whole(this IQueryable<GreenGrade> grades) => grades
        .Include(grade => grade.Defects)
        .Include(grade => grade.Limits.OrderBy(limit => limit.Position))
        .Include(grade => grade.Screens.OrderByDescending(share => share.Screen))
        .AsSplitQuery();

    /// <summary>The varieties of the lot that a sample stands for, which tell its species; null where nothing is stated.</summary>
    public static Task<string?> VarietiesOfAsync(this LedgerContext db, Id<Sample>? sampleId, CancellationToken cancellationToken) => db.Samples
        .Where(sample => sample.Id == sampleId)
        .Join(db.Lots, sample => sample.LotId, lot => lot.Id, (sample, lot) => lot.Varieties)
        .FirstOrDefaultAsync(cancellationToken);

    public static IQueryable<GreenGrade> OfSample(this IQueryable<GreenGrade> grades, Id<Sample> sampleId) => grades
        .Where(grade => grade.SampleId == sampleId)
        .OrderByDescending(grade => grade.GradedOn).ThenByDescending(grade => grade.Id);
}
