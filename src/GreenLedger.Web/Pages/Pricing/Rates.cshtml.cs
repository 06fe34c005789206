using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Pricing;

public sealed class RatesModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Currency { get; set; }

    [BindProperty(SupportsGet = true)]
    public DateOnly? From { get; set; }

    [BindProperty(SupportsGet = true)]
    public DateOnly? Until { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    public bool HasAny { get; private set; }

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<ExchangeRate> Rates { get; private set; } = [];

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        HasAny = await db.ExchangeRates.AnyAsync(cancellationToken);
        var rates = Filtered();
        Paging = Paging.Of(number, await rates.CountAsync(cancellationToken), "rate", "rates");
        Rates = await Sorted(rates).Skip(Paging.Skip).Take(Paging.Size).ToListAsync(cancellationToken);
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        TableColumn<ExchangeRate>[] columns =
        [
            TableColumn<ExchangeRate>.Day("Day", rate => rate.On),
            TableColumn<ExchangeRate>.Text("Currency", rate => rate.Currency.Code, 10),
            TableColumn<ExchangeRate>.Number("Units for 1 EUR", rate => rate.UnitsPerEuro, 6),
            TableColumn<ExchangeRate>.Text("Kind", rate => rate.Kind == RateKind.Customs ? "customs" : "market", 10),
            TableColumn<ExchangeRate>.Text("Source", rate => rate.Source, 40),
        ];
        return await this.WorkbookAsync("Exchange rates", columns, await Sorted(Filtered()).ToListAsync(cancellationToken), cancellationToken);
    }

    private IQueryable<ExchangeRate> Filtered()
    {
        var rates = db.ExchangeRates.AsNoTracking().Between(From, Until);
        return Domain.Measures.Currency.TryParse(Currency, null, out var currency)
            ? rates.Where(rate => rate.Currency == currency)
            : string.IsNullOrWhiteSpace(Currency) ? rates : rates.Where(_ => false);
    }

    private IQueryable<ExchangeRate> Sorted(IQueryable<ExchangeRate> rates) => Sort switch
    {
        "on" => rates.OrderBy(rate => rate.On).ThenBy(rate => rate.Currency),
        "currency" => rates.OrderBy(rate => rate.Currency).ThenByDescending(rate => rate.On),
        "-currency" => rates.OrderByDescending(rate => rate.Currency).ThenByDescending(rate => rate.On),
        _ => rates.OrderByDescending(rate => rate.On).ThenBy(rate => rate.Currency),
    };
}
