using GreenLedger.Data.Costs;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Costs;

/// <summary>Invoices and charges as they were billed, the latest first.</summary>
public sealed class IndexModel(PostingQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Q { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<PostingRow> Rows { get; private set; } = [];

    public bool HasAny { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Paging = Paging.Of(PageNumber, await query.CountAsync(Q, cancellationToken), "posting", "postings");
        Rows = await query.ListAsync(Q, Paging.Skip, Paging.Size, cancellationToken);
        HasAny = Rows.Count > 0 || await query.CountAsync(null, cancellationToken) > 0;
    }
}
