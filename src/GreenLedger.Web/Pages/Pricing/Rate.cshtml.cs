using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Pricing;

public sealed class RateModel(LedgerContext db, HouseZone house, TimeProvider clock) : FormPage
{
    [BindProperty]
    public RateForm Input { get; set; } = new();

    /// <summary>The rate of that day, where there is one.</summary>
    public Id<ExchangeRate>? Stated { get; private set; }

    public async Task OnGetAsync(string? currency, DateOnly? on, RateKind? kind, CancellationToken cancellationToken)
    {
        Input.On = on ?? house.Today;
        Input.Kind = kind ?? RateKind.Market;
        if (Currency.TryParse(currency, null, out var known))
        {
            Input.Currency = known.Code;
            var rate = await db.ExchangeRates.AsNoTracking().Of(Input.Kind, known, Input.On.Value).SingleOrDefaultAsync(cancellationToken);
            (Input.UnitsPerEuro, Input.Source) = (rate?.UnitsPerEuro, rate?.Source ?? "");
            Stated = rate?.Id;
        }
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await db.ExchangeRates.StateAsync(
            Input.Kind, Currency.Of(Input.Currency), Input.On!.Value, Input.UnitsPerEuro!.Value, Input.Source, User.FindPerson(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"The rate of {Input.Currency} is saved.");
        return RedirectToPage("/Pricing/Rates");
    }

    public sealed class RateForm
    {
        [Required(ErrorMessage = "Choose the currency of the rate.")]
        public string Currency { get; set; } = "";

        [Required(ErrorMessage = "State the day of the rate.")]
        [Display(Name = "Day")]
        public DateOnly? On { get; set; }

        [Required(ErrorMessage = "State how many units of the currency one euro buys.")]
        [Display(Name = "Units for 1 EUR")]
        public decimal? UnitsPerEuro { get; set; }

        public RateKind Kind { get; set; }

        [Required(ErrorMessage = "State where the rate comes from.")]
        public string Source { get; set; } = "";
    }
}
