using GreenLedger.Data;
using GreenLedger.Data.Summaries;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>What was kept of what was agreed about coffee of one origin.</summary>
public sealed class OriginRecordModel(LedgerContext db, SupplierRecordQuery query) : RecordPage(query)
{
    /// <summary>ISO 3166-1 alpha-2.</summary>
    [BindProperty(SupportsGet = true)]
    public string Country { get; set; } = "";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        var code = Country.ToUpperInvariant();
        if (await db.Countries.Where(country => country.Code == code).Select(country => country.Name).SingleOrDefaultAsync(cancellationToken) is not { } name)
        {
            return NotFound();
        }

        await ReadAsync(name, source => source.Origin == code, cancellationToken);
        return Page();
    }
}
