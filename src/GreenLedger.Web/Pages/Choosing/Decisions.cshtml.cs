using GreenLedger.Data.Choosing;
using GreenLedger.Domain.Choosing;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class DecisionsModel(DecisionQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true)]
    public Outcome? Outcome { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool? Withdrawn { get; set; }

    public IReadOnlyList<DecisionRow> Rows { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public bool HasAny { get; private set; }

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        var filter = new DecisionFilter(Search, Outcome, Withdrawn);
        Paging = Paging.Of(number, await query.CountAsync(filter, cancellationToken), "decision", "decisions");
        Rows = await query.ListAsync(filter, Paging.Skip, Paging.Size, cancellationToken);
        HasAny = Rows.Count > 0 || await query.CountAsync(new DecisionFilter(), cancellationToken) > 0;
    }
}
