using GreenLedger.Data.Roasting;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Roasting;

internal sealed class IndexModel(RoastQuery query, Reader reader) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Q { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<RoastRow> Roasts { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var seal = await reader.SealAsync();
        Paging = Paging.Of(PageNumber, await query.CountAsync(Q, seal, cancellationToken), "roast", "roasts");
        Roasts = await query.ListAsync(Q, Sort, seal, Paging.Skip, Paging.Size, cancellationToken);
    }
}
