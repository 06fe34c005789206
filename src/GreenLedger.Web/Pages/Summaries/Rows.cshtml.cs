using GreenLedger.Data.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using GreenLedger.Web.Summaries;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Summaries;

/// <summary>The rows behind a figure of a summary, with the total that the figure shows.</summary>
public sealed class RowsModel(PurchaseSummaryQuery query, HouseZone zone) : PageModel
{
    private const int RowsAPage = 100;

    [BindProperty(SupportsGet = true)]
    public SummaryAsk Ask { get; set; } = new();

    [BindProperty(SupportsGet = true)]
    public RowsAsk Narrow { get; set; } = new();

    public PurchaseSummary? Summary { get; private set; }

    public SummaryTable? Table { get; private set; }

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    /// <summary>Why there are no rows, in a sentence; null where there are.</summary>
    public string? Trouble { get; private set; }

    /// <summary>The rows of this page with the total of all.</summary>
    public SummaryTable Shown => Table! with { Rows = [.. Table.Rows.Skip(Paging.Skip).Take(Paging.Size)] };

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        try
        {
            Rule.Require(ModelState.IsValid, "This address asks for no figure that the summary has: go back to the summary and open the figure there.");
            Summary = await query.FindAsync(Ask.Wish(zone.Today), zone.Today, cancellationToken);
            Rule.Require(Summary is not null, "No house is set up yet.");
            Table = SummaryTables.Rows(Summary, Narrow.Filter(), SummaryWords.Title(Narrow.Filter()));
            Paging = Paging.Of(number, Table.Rows.Count, "row", "rows", RowsAPage);
        }
        catch (RuleBrokenException broken)
        {
            // An address is typed by hand: the sentence stands in place of the rows.
            Trouble = broken.Message;
        }
    }
}
