using GreenLedger.Data.Trace;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Trace;

/// <summary>Mock recalls that were held, the newest first.</summary>
public sealed class RecallsModel(RecallQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = null!;

    public IReadOnlyList<RecallRow> Rows { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Paging = Paging.Of(PageNumber, await query.CountAsync(cancellationToken), "recall", "recalls");
        Rows = await query.ListAsync(Paging.Skip, Paging.Size, cancellationToken);
    }
}
