using GreenLedger.Data;
using GreenLedger.Data.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>What was kept of what was agreed about one producer's coffee.</summary>
public sealed class ProducerRecordModel(LedgerContext db, SupplierRecordQuery query) : RecordPage(query)
{
    [BindProperty(SupportsGet = true)]
    public Id<Producer> Id { get; set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.Producers.Where(producer => producer.Id == Id).Select(producer => producer.Name).SingleOrDefaultAsync(cancellationToken) is not { } name)
        {
            return NotFound();
        }

        await ReadAsync(name, source => source.Producer == Id, cancellationToken);
        return Page();
    }
}
