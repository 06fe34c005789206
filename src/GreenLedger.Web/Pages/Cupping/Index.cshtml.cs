using GreenLedger.Data.Cupping;
using GreenLedger.Documents.Layout;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Cupping;

public sealed class IndexModel(SessionQuery query) : PageModel
{
    private const int MostExported = 100_000;

    private static readonly TableColumn<SessionRow>[] Columns =
    [
        TableColumn<SessionRow>.Text("Session", row => row.Title, 40),
        TableColumn<SessionRow>.Day("Held", row => row.HeldOn),
        TableColumn<SessionRow>.Text("Form", row => row.FormName),
        TableColumn<SessionRow>.Count("Samples", row => row.Samples),
        TableColumn<SessionRow>.Count("Cuppers", row => row.Cuppers),
        TableColumn<SessionRow>.Count("Sheets", row => row.Sheets),
        TableColumn<SessionRow>.Instant("Closed", row => row.ClosedAt),
    ];

    [BindProperty(SupportsGet = true)]
    public string? Q { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool? Closed { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<SessionRow> Sessions { get; private set; } = [];

    public bool IsNarrowed => !string.IsNullOrWhiteSpace(Q) || Closed is not null;

    private SessionFilter Filter => new(Q, Closed, Sort);

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Paging = Paging.Of(PageNumber, await query.CountAsync(Filter, cancellationToken), "session", "sessions");
        Sessions = await query.ListAsync(Filter, Paging.Skip, Paging.Size, cancellationToken);
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        var rows = await query.ListAsync(Filter, 0, MostExported, cancellationToken);
        return await this.WorkbookAsync("Sessions", Columns, rows, cancellationToken);
    }
}
