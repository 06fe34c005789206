using GreenLedger.Data.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>Everybody who has cupped, for the lead cupper.</summary>
[InArea("Cuppers' records")]
public sealed class CuppersModel(CupperRecordQuery query) : PageModel
{
    public IReadOnlyList<CupperRow> Rows { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken) => Rows = await query.CuppersAsync(cancellationToken);
}
