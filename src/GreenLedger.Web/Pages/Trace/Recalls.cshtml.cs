using GreenLedger.Data.Trace;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Trace;

/// <summary>Mock recalls that were held, the newest first unless they are sorted otherwise.</summary>
public sealed class RecallsModel(RecallQuery query) : PageModel
{
    private static readonly TableColumn<RecallRow>[] Columns =
    [
        TableColumn<RecallRow>.Text("Number", row => row.Recall.Ref, 12),
        TableColumn<RecallRow>.Text("From", row => row.Recall.From.Word(), 16),
        TableColumn<RecallRow>.Text("Recalled", row => row.Recall.StartName, 32),
        TableColumn<RecallRow>.Text("Reason", row => row.Recall.Reason, 40),
        TableColumn<RecallRow>.Instant("Started, UTC", row => row.Recall.StartedAt),
        TableColumn<RecallRow>.Text("Started by", row => row.StartedBy, 20),
        TableColumn<RecallRow>.Instant("Ended, UTC", row => row.Recall.EndedAt),
        TableColumn<RecallRow>.Text("Ended by", row => row.EndedBy, 20),
        TableColumn<RecallRow>.Number("Took, minutes", row => row.Recall.Took is { } took ? (decimal)took.TotalMinutes : null, 1),
        TableColumn<RecallRow>.Number("Received, kg", row => row.Recall.Findings?.Received.Kilograms, 3),
        TableColumn<RecallRow>.Number("Found, %", row => row.Recall.Findings?.Found.Points, 2),
        TableColumn<RecallRow>.Text("Learned", row => row.Recall.Learned, 40),
    ];

    [BindProperty(SupportsGet = true, Name = "sort")]
    public string? Sort { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = null!;

    public IReadOnlyList<RecallRow> Rows { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var all = await SortedAsync(cancellationToken);
        Paging = Paging.Of(PageNumber, all.Count, "recall", "recalls");
        Rows = [.. all.Skip(Paging.Skip).Take(Paging.Size)];
    }

    /// <summary>What the list shows, every page of it, as a workbook.</summary>
    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken) =>
        await this.WorkbookAsync("Mock recalls", Columns, await SortedAsync(cancellationToken), cancellationToken);

    /// <summary>A house holds one or two in a year: all of them are read.</summary>
    private async Task<IReadOnlyList<RecallRow>> SortedAsync(CancellationToken cancellationToken)
    {
        var all = await query.ListAsync(0, int.MaxValue, cancellationToken);
        if (string.IsNullOrEmpty(Sort))
        {
            return all;
        }

        IComparable? Key(RecallRow row) => Sort.TrimStart('-') switch
        {
            "recalled" => row.Recall.StartName,
            "started" => row.Recall.StartedAt,
            "by" => row.StartedBy,
            "took" => row.Recall.Took,
            "received" => (row.Recall.Findings?.Received ?? Weight.Zero).Micrograms,
            "found" => row.Recall.Findings?.Found.Points,
            _ => row.Recall.Ref,
        };
        return [.. Sort.StartsWith('-') ? all.OrderByDescending(Key) : all.OrderBy(Key)];
    }
}
