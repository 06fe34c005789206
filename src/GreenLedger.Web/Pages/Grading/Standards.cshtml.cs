using GreenLedger.Data;
using GreenLedger.Domain.Grading;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>Every revision of the defect tables and of the physical limits.</summary>
public sealed class StandardsModel(LedgerContext db) : PageModel
{
    public IReadOnlyList<SchemeRevision> Schemes { get; private set; } = [];

    public IReadOnlyList<LimitsRevision> Limits { get; private set; } = [];

    public static string Species(bool? isRobusta) => isRobusta switch { true => "robusta", false => "arabica", null => "any" };

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Schemes = await db.SchemeRevisions.AsNoTracking().OrderBy(one => one.Code).ThenByDescending(one => one.Revision).ToListAsync(cancellationToken);
        Limits = await db.LimitsRevisions.AsNoTracking().OrderBy(one => one.Code).ThenByDescending(one => one.Revision).ToListAsync(cancellationToken);
    }
}
