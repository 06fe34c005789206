using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

internal sealed class GradeModel(LedgerContext db, Reader reader) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<GreenGrade> Id { get; set; }

    public GreenGrade Found { get; private set; } = null!;

    public string LabelCode { get; private set; } = "";

    public string LotName { get; private set; } = "";

    /// <summary>On a table where the reader cups: a note may name the coffee.</summary>
    public bool IsSealed { get; private set; }

    public string? Grader { get; private set; }

    public string? WithdrawnBy { get; private set; }

    public GradingStandards Standards { get; private set; } = GradingStandards.Published;

    /// <summary>The table that it was counted by, in its revision; null when beans were not counted by kind.</summary>
    public DefectScheme? Scheme => Standards.Find(Found.Scheme);

    /// <summary>What a tonne as graded would weigh at the moisture of a usual contract; null where it was not measured.</summary>
    public Weight? Heavier => Found.Moisture is { } moisture ? MoistureChange.Of(Weight.FromKilograms(1_000m), moisture, UsualMoisture) : null;

    private static Percent UsualMoisture => Percent.Of(11m);

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.GreenGrades.AsNoTracking().WithWithdrawn().Whole().SingleOrDefaultAsync(grade => grade.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        Standards = await db.GradingStandardsAsync(cancellationToken);
        if (found.Limits.Count == 0)
        {
            // Written down before limits were kept with the grade: they are held against it now, and nothing is stored.
            found.Judge(await db.VarietiesOfAsync(found.SampleId, cancellationToken), Standards);
        }

        LabelCode = await db.Samples.Where(sample => sample.Id == found.SampleId).Select(sample => sample.LabelCode).SingleAsync(cancellationToken);
        IsSealed = (await reader.SealAsync()).Covers(found.SampleId.Value);
        LotName = IsSealed ? "Shown when the open cupping session is closed" : await db.Lots.Where(lot => lot.Id == found.LotId).Select(lot => lot.Name).SingleAsync(cancellationToken);
        WithdrawnBy = await db.People.Where(person => person.Id == found.WithdrawnBy).Select(person => person.Name).SingleOrDefaultAsync(cancellationToken);
        Grader = await db.People.Where(person => person.Id == found.By).Select(person => person.Name).SingleOrDefaultAsync(cancellationToken);
        return Page();
    }
}
