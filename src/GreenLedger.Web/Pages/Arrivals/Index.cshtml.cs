using GreenLedger.Data.Arrivals;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>What was received, the latest first, with what the scales say.</summary>
public sealed class IndexModel(ArrivalListQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Q { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<ArrivalRow> Arrivals { get; private set; } = [];

    public bool HasAny { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Paging = Paging.Of(PageNumber, await query.CountAsync(Q, cancellationToken), "arrival", "arrivals");
        Arrivals = await query.ListAsync(Q, Paging.Skip, Paging.Size, cancellationToken);
        HasAny = Arrivals.Count > 0 || await query.CountAsync(null, cancellationToken) > 0;
    }
}
