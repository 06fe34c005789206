using GreenLedger.Data.Costs;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Pricing;
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
    public string? Sort { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<PostingRow> Rows { get; private set; } = [];

    public bool HasAny { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Paging = Paging.Of(PageNumber, await query.CountAsync(Q, cancellationToken), "posting", "postings");
        Rows = await query.ListAsync(Q, Sort, Paging.Skip, Paging.Size, cancellationToken);
        HasAny = Rows.Count > 0 || await query.CountAsync(null, cancellationToken) > 0;
    }

    /// <summary>What the list shows, every page of it, as a workbook.</summary>
    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        TableColumn<PostingRow>[] columns =
        [
            TableColumn<PostingRow>.Text("Invoice", row => row.Posting.Document, 18),
            TableColumn<PostingRow>.Day("Invoice day", row => row.Posting.On),
            TableColumn<PostingRow>.Text("Stage", row => row.Posting.Stage?.Word() ?? "The coffee", 24),
            TableColumn<PostingRow>.Text("Charged to", row => row.On, 40),
            TableColumn<PostingRow>.Text("From", row => row.Posting.From, 28),
            TableColumn<PostingRow>.Text("Currency billed", row => row.Posting.Amount.Currency.Code, 10),
            TableColumn<PostingRow>.Number("As billed", row => row.Posting.Amount.Amount),
            TableColumn<PostingRow>.Text("House currency", row => row.Posting.House.Currency.Code, 10),
            TableColumn<PostingRow>.Number("In house currency", row => row.Posting.House.Amount),
            TableColumn<PostingRow>.Day("Rate of", row => row.Posting.RateOn),
            TableColumn<PostingRow>.Day("Storage from", row => row.Posting.CoversFrom),
            TableColumn<PostingRow>.Day("Storage until", row => row.Posting.CoversUntil),
            TableColumn<PostingRow>.Text("Posted by", row => row.Who, 24),
            TableColumn<PostingRow>.Text("Withdrawn because", row => row.Posting.WithdrawnBecause, 32),
        ];
        return await this.WorkbookAsync("Postings", columns, await query.ListAsync(Q, Sort, 0, null, cancellationToken), cancellationToken);
    }
}
