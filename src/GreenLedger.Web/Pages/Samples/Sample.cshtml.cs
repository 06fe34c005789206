using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

internal sealed class SampleModel(LedgerContext db, SessionQuery sessions, Reader reader) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Sample> Id { get; set; }

    public Sample Found { get; private set; } = null!;

    /// <summary>Null while an open session keeps it from the reader.</summary>
    public Lot? Lot { get; private set; }

    public IReadOnlyList<GreenGrade> Grades { get; private set; } = [];

    public IReadOnlyList<LotResultRow> Results { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.Samples.AsNoTracking().SingleOrDefaultAsync(sample => sample.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        if ((await reader.SealAsync()).Covers(Id.Value))
        {
            return Page();
        }

        Lot = await db.Lots.AsNoTracking().SingleAsync(lot => lot.Id == found.LotId, cancellationToken);
        Grades = await db.GreenGrades.AsNoTracking().OfSample(Id).ToListAsync(cancellationToken);
        Results = [.. (await sessions.OfLotAsync(found.LotId, cancellationToken)).Where(row => row.Result.SampleId == Id)];
        return Page();
    }
}
