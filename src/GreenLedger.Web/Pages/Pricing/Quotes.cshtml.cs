using GreenLedger.Data;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Pricing;

public sealed class QuotesModel(LedgerContext db, HouseZone house) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Month { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    public bool HasAny { get; private set; }

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<FuturesQuote> Quotes { get; private set; } = [];

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        HasAny = await db.FuturesQuotes.AnyAsync(cancellationToken);
        var quotes = Filtered();
        Paging = Paging.Of(number, await quotes.CountAsync(cancellationToken), "quote", "quotes");
        Quotes = await Sorted(quotes).Skip(Paging.Skip).Take(Paging.Size).ToListAsync(cancellationToken);
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        TableColumn<FuturesQuote>[] columns =
        [
            TableColumn<FuturesQuote>.Day("Day", quote => quote.On),
            TableColumn<FuturesQuote>.Text("Month", quote => quote.Month.ToString(), 10),
            TableColumn<FuturesQuote>.Number("Quote", quote => quote.Quoted),
            TableColumn<FuturesQuote>.Text("Unit", quote => quote.Month.Market.QuoteUnit(), 14),
            TableColumn<FuturesQuote>.Text("Source", quote => quote.Source, 40),
        ];
        return await this.WorkbookAsync("Futures quotes", columns, await Sorted(Filtered()).ToListAsync(cancellationToken), cancellationToken);
    }

    private IQueryable<FuturesQuote> Filtered()
    {
        var quotes = db.FuturesQuotes.AsNoTracking();
        return FuturesMonth.TryParse(Month, house.Today, out var month)
            ? quotes.Where(quote => quote.Month == month)
            : string.IsNullOrWhiteSpace(Month) ? quotes : quotes.Where(_ => false);
    }

    private IQueryable<FuturesQuote> Sorted(IQueryable<FuturesQuote> quotes) => Sort switch
    {
        "on" => quotes.OrderBy(quote => quote.On).ThenBy(quote => quote.Month),
        "month" => quotes.OrderBy(quote => quote.Month).ThenByDescending(quote => quote.On),
        "-month" => quotes.OrderByDescending(quote => quote.Month).ThenByDescending(quote => quote.On),
        _ => quotes.OrderByDescending(quote => quote.On).ThenBy(quote => quote.Month),
    };
}
