using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
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

    /// <summary>Of the lot; they tell which limits hold.</summary>
    public string? Varieties { get; private set; }

    public string? Grader { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.GreenGrades.AsNoTracking().Whole().SingleOrDefaultAsync(grade => grade.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        LabelCode = await db.Samples.Where(sample => sample.Id == found.SampleId).Select(sample => sample.LabelCode).SingleAsync(cancellationToken);
        LotName = (await reader.SealAsync()).Covers(found.SampleId.Value) ? "On the table of an open cupping session" : await db.Lots.Where(lot => lot.Id == found.LotId).Select(lot => lot.Name).SingleAsync(cancellationToken);
        Varieties = await db.Lots.Where(lot => lot.Id == found.LotId).Select(lot => lot.Varieties).SingleAsync(cancellationToken);
        Grader = await db.People.Where(person => person.Id == found.By).Select(person => person.Name).SingleOrDefaultAsync(cancellationToken);
        return Page();
    }
}
