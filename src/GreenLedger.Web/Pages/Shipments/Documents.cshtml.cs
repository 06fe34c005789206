using GreenLedger.Data;
using GreenLedger.Domain.Shipments;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Shipments;

/// <summary>The documents that the house asks for, and with which shipments.</summary>
public sealed class DocumentsModel(LedgerContext db) : PageModel
{
    public IReadOnlyList<DocumentRule> All { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken) =>
        All = await db.DocumentRules.AsNoTracking().OrderByDescending(rule => rule.IsInUse).ThenBy(rule => rule.Position).ThenBy(rule => rule.Name).ToListAsync(cancellationToken);
}
