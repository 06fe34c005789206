using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Api;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Pricing;

public sealed class QuoteModel(LedgerContext db, HouseZone house, TimeProvider clock) : FormPage
{
    [BindProperty]
    public QuoteForm Input { get; set; } = new();

    /// <summary>The quote of that day, where there is one.</summary>
    public Id<FuturesQuote>? Stated { get; private set; }

    public async Task OnGetAsync(string? month, DateOnly? on, CancellationToken cancellationToken)
    {
        Input.On = on ?? house.Today;
        if (FuturesMonth.TryParse(month, house.Today, out var known))
        {
            Input.Month = known.ToString();
            var quote = await db.FuturesQuotes.AsNoTracking().SingleOrDefaultAsync(quote => quote.Month == known && quote.On == Input.On, cancellationToken);
            (Input.Quoted, Input.Source) = (quote?.Quoted, quote?.Source ?? "");
            Stated = quote?.Id;
        }
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var month = PricingRequests.Month(Input.Month, house.Today);
        await db.FuturesQuotes.StateAsync(month, Input.On!.Value, Input.Quoted!.Value, Input.Source, User.FindPerson(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"The quote of {month} is saved.");
        return RedirectToPage("/Pricing/Quotes");
    }

    public sealed class QuoteForm
    {
        [Required(ErrorMessage = "Name the futures month, such as KCH27.")]
        [Display(Name = "Futures month")]
        public string Month { get; set; } = "";

        [Required(ErrorMessage = "State the day of the quote.")]
        [Display(Name = "Day")]
        public DateOnly? On { get; set; }

        [Required(ErrorMessage = "State the quote in its market's unit.")]
        [Display(Name = "Quote")]
        public decimal? Quoted { get; set; }

        [Required(ErrorMessage = "State where the quote comes from.")]
        public string Source { get; set; } = "";
    }
}
