using GreenLedger.Data.Choosing;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Choosing;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class DecisionsModel(DecisionQuery query, HouseZone house) : PageModel
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
        Paging = Paging.Of(number, await query.CountAsync(Filter, cancellationToken), "decision", "decisions");
        Rows = await query.ListAsync(Filter, Paging.Skip, Paging.Size, cancellationToken);
        HasAny = Rows.Count > 0 || await query.CountAsync(new DecisionFilter(), cancellationToken) > 0;
    }

    /// <summary>What the list shows, every page of it, as a workbook.</summary>
    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        var rows = await query.ListAsync(Filter, 0, null, cancellationToken);
        var stream = new MemoryStream();
        await TableWorkbook.WriteAsync(stream, "Decisions", DecisionColumns.Of(house.Zone), rows, cancellationToken);
        stream.Position = 0;
        return File(stream, TableWorkbook.MediaType, "decisions.xlsx");
    }

    private DecisionFilter Filter => new(Search, Outcome, Withdrawn);
}
