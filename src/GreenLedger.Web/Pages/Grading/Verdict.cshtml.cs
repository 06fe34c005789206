using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Samples;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>The class and the limits of a grade while it is typed; it stores nothing.</summary>
public sealed class VerdictModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public NewModel.NewForm Input { get; set; } = new();

    public GradeOutlook? Outlook { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var label = (Input.Label ?? "").Trim().ToUpperInvariant();
        var sample = await db.Samples.Where(one => one.LabelCode == label).Select(one => (Id<Sample>?)one.Id).SingleOrDefaultAsync(cancellationToken);
        Outlook = Input.Draft().Outlook(await db.VarietiesOfAsync(sample, cancellationToken), await db.GradingStandardsAsync(cancellationToken));
    }
}
