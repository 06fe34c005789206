using GreenLedger.Data.Trace;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Trace;

/// <summary>Finds what a trace starts from.</summary>
public sealed class IndexModel(TracePicksQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Search { get; set; }

    public IReadOnlyList<TracePick> Picks { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken) => Picks = await query.ListAsync(Search, cancellationToken);
}
