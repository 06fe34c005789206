using GreenLedger.Data;
using GreenLedger.Data.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>What one supplier kept of what was agreed.</summary>
public sealed class SupplierRecordModel(LedgerContext db, SupplierRecordQuery query) : RecordPage(query)
{
    [BindProperty(SupportsGet = true)]
    public Id<Supplier> Id { get; set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.Suppliers.Where(supplier => supplier.Id == Id).Select(supplier => supplier.Name).SingleOrDefaultAsync(cancellationToken) is not { } name)
        {
            return NotFound();
        }

        await ReadAsync(name, source => source.Supplier == Id, cancellationToken);
        return Page();
    }
}
