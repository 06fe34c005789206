using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Grading;

/// <summary>One grade of a list.</summary>
public sealed record GradeRow(
    Id<GreenGrade> Id,
    Id<Sample> SampleId,
    Id<Lot> LotId,
    string LabelCode,
    string LotRef,
    string LotName,
    DateOnly GradedOn,
    Percent? Moisture,
    WaterActivity? WaterActivity,
    FullDefects? Category1,
    FullDefects? Category2,
    int? Quakers);

/// <summary>Lists of grades; those of samples sealed for the reader are left out.</summary>
public sealed class GradeQuery(LedgerContext db)
{
    public Task<int> CountAsync(string? text, Seal seal, CancellationToken cancellationToken) =>
        Filtered(text, seal).CountAsync(cancellationToken);

    public async Task<IReadOnlyList<GradeRow>> ListAsync(string? text, string? sort, Seal seal, int skip, int take, CancellationToken cancellationToken)
    {
        var rows = await Sorted(Filtered(text, seal), sort).Skip(skip).Take(take).ToListAsync(cancellationToken);
        return [.. rows.Select(row => new GradeRow(
            row.Grade.Id,
            row.Grade.SampleId,
            row.Grade.LotId,
            row.Sample.LabelCode,
            row.Lot.Ref,
            row.Lot.Name,
            row.Grade.GradedOn,
            row.Grade.Moisture,
            row.Grade.WaterActivity,
            row.Grade.Category1,
            row.Grade.Category2,
            row.Grade.Quakers))];
    }

    private IQueryable<GradeOfLot> Filtered(string? text, Seal seal)
    {
        var grades = db.GreenGrades.AsNoTracking()
            .Join(db.Samples.Unsealed(seal), grade => grade.SampleId, sample => sample.Id, (grade, sample) => new { grade, sample })
            .Join(db.Lots, pair => pair.grade.LotId, lot => lot.Id, (pair, lot) => new GradeOfLot { Grade = pair.grade, Sample = pair.sample, Lot = lot });
        if (string.IsNullOrWhiteSpace(text))
        {
            return grades;
        }

        var label = text.Trim().ToUpperInvariant();
        var folded = SearchText.Of(text);
        return grades.Where(row => row.Sample.LabelCode.Contains(label) || row.Lot.SearchText.Contains(folded));
    }

    private static IQueryable<GradeOfLot> Sorted(IQueryable<GradeOfLot> grades, string? sort) => sort switch
    {
        "label" => grades.OrderBy(row => row.Sample.LabelCode).ThenBy(row => row.Grade.Id),
        "-label" => grades.OrderByDescending(row => row.Sample.LabelCode).ThenByDescending(row => row.Grade.Id),
        "lot" => grades.OrderBy(row => row.Lot.Name).ThenBy(row => row.Grade.Id),
        "-lot" => grades.OrderByDescending(row => row.Lot.Name).ThenByDescending(row => row.Grade.Id),
        "graded" => grades.OrderBy(row => row.Grade.GradedOn).ThenBy(row => row.Sample.LabelCode).ThenBy(row => row.Grade.Id),
        _ => grades.OrderByDescending(row => row.Grade.GradedOn).ThenBy(row => row.Sample.LabelCode).ThenBy(row => row.Grade.Id),
    };

    private sealed class GradeOfLot
    {
        public required GreenGrade Grade { get; init; }

        public required Sample Sample { get; init; }

        public required Lot Lot { get; init; }
    }
}
