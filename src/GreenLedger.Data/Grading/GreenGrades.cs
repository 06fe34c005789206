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
        .Include(grade => grade.Screens.OrderByDescending(share => share.Screen))
        .AsSplitQuery();

    public static IQueryable<GreenGrade> OfSample(this IQueryable<GreenGrade> grades, Id<Sample> sampleId) => grades
        .Where(grade => grade.SampleId == sampleId)
        .OrderByDescending(grade => grade.GradedOn);
}
