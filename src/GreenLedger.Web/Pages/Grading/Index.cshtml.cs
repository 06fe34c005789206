using GreenLedger.Data.Grading;
using GreenLedger.Documents.Layout;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Grading;

internal sealed class IndexModel(GradeQuery query, Reader reader) : PageModel
{
    private const int MostExported = 100_000;

    private static readonly TableColumn<GradeRow>[] Columns =
    [
        TableColumn<GradeRow>.Text("Label", row => row.LabelCode, 10),
        TableColumn<GradeRow>.Text("Lot", row => row.LotName, 36),
        TableColumn<GradeRow>.Text("Reference", row => row.LotRef),
        TableColumn<GradeRow>.Day("Graded", row => row.GradedOn),
        TableColumn<GradeRow>.Number("Moisture (%)", row => row.Moisture?.Points),
        TableColumn<GradeRow>.Number("Water activity", row => row.WaterActivity?.Ratio, 4),
        TableColumn<GradeRow>.Number("Category 1 (full defects)", row => row.Category1?.Count),
        TableColumn<GradeRow>.Number("Category 2 (full defects)", row => row.Category2?.Count),
        TableColumn<GradeRow>.Count("Quakers", row => row.Quakers),
    ];

    [BindProperty(SupportsGet = true)]
    public string? Q { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<GradeRow> Grades { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var seal = await reader.SealAsync();
        Paging = Paging.Of(PageNumber, await query.CountAsync(Q, seal, cancellationToken), "grade", "grades");
        Grades = await query.ListAsync(Q, Sort, seal, Paging.Skip, Paging.Size, cancellationToken);
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        var rows = await query.ListAsync(Q, Sort, await reader.SealAsync(), 0, MostExported, cancellationToken);
        return await this.WorkbookAsync("Grades", Columns, rows, cancellationToken);
    }
}
