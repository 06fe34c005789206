using GreenLedger.Data;
using GreenLedger.Domain.Cupping;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

public sealed class FormsModel(LedgerContext db) : PageModel
{
    public IReadOnlyList<CuppingForm> Forms { get; private set; } = [];

    public IReadOnlyList<DescriptiveForm> Descriptive { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Forms = await db.CuppingForms.AsNoTracking().OrderBy(form => form.Code).ThenByDescending(form => form.Revision).ToListAsync(cancellationToken);
        Descriptive = await db.DescriptiveForms.AsNoTracking().OrderBy(form => form.Name).ThenByDescending(form => form.Revision).ToListAsync(cancellationToken);
    }
}
