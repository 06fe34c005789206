using System.ComponentModel.DataAnnotations;
using System.Globalization;
using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using GreenLedger.Web.Pricing;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.ModelBinding;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Pricing;

/// <summary>A calculator whose whole question stands in the address.</summary>
[BindProperties(SupportsGet = true)]
public sealed class CalculateModel(LedgerContext db, HouseZone house) : PageModel
{
    public bool Asked { get; set; }

    public decimal? Price { get; set; }

    public string Currency { get; set; } = "USD";

    public PriceUnit Unit { get; set; } = PriceUnit.Pound;

    [Display(Name = "Futures month")]
    public string? Month { get; set; }

    [Display(Name = "Differential")]
    public decimal? Quoted { get; set; }

    [Display(Name = "Delivery rule")]
    public Incoterm Delivery { get; set; } = Incoterm.Fob;

    public string? Place { get; set; }

    [Display(Name = "Country of origin")]
    public string? Origin { get; set; }

    [Display(Name = "Quantity, kg")]
    public decimal QuantityKg { get; set; } = 19_200m;

    public int? Bags { get; set; }

    public string? Route { get; set; }

    [BindNever]
    public bool HasRoute { get; private set; }

    [BindNever]
    public LandedCost? Cost { get; private set; }

    /// <summary>What cannot be read, in a sentence.</summary>
    [BindNever]
    public string? Trouble { get; private set; }

    [BindNever]
    public IReadOnlyList<SelectListItem> Routes { get; private set; } = [];

    [BindNever]
    public IReadOnlyList<SelectListItem> Units { get; } =
        [.. Enum.GetValues<PriceUnit>().Select(unit => new SelectListItem("per " + unit.Sign(), unit.ToString()))];

    [BindNever]
    public IReadOnlyList<SelectListItem> Rules { get; } =
        [.. Enum.GetValues<Incoterm>().Select(term => new SelectListItem(term.Word(), term.ToString()))];

    public Task OnGetAsync(CancellationToken cancellationToken) => ReckonAsync(cancellationToken);

    /// <summary>The breakdown, line by line, as a workbook.</summary>
    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        await ReckonAsync(cancellationToken);
        return Cost is { IsKnown: true } cost
            ? await this.WorkbookAsync("Landed cost", LandedCostColumns.Of(cost), LandedCostColumns.Rows(cost), cancellationToken)
            : NotFound();
    }

    private async Task ReckonAsync(CancellationToken cancellationToken)
    {
        var routes = await db.Routes.InUse().Whole().AsNoTracking().OrderBy(route => route.Name).ToListAsync(cancellationToken);
        HasRoute = routes.Count > 0;
        Routes = [.. routes.Select(route => new SelectListItem(route.Name, route.Id.ToString()))];
        if (!Asked || await new LandedCostsQuery(db).FindAsync(house.Today, cancellationToken) is not { } costs)
        {
            return;
        }

        if (Unread() is { } trouble)
        {
            Trouble = trouble;
            return;
        }

        var chosen = routes.Find(route => route.Id.ToString() == Route);
        Cost = chosen is null ? costs.Of(Parcel()) : costs.Of(Parcel(), chosen);
    }

    /// <summary>The first figure that is no price, month or quantity of coffee; null when all can be read.</summary>
    private string? Unread() =>
        !ModelState.IsValid ? "A figure cannot be read: use digits and a decimal point."
        : Math.Abs(Price ?? 0m) > 1_000_000m ? "This price is too large: please check the amount and its unit."
        : Math.Abs(Quoted ?? 0m) > 100_000m ? "This differential is too large: please check the figure and its unit."
        : QuantityKg is < 0m or > 1_000_000_000m ? "The quantity lies above zero: please check it."
        : !Domain.Measures.Currency.TryParse(Currency, null, out _) ? "Choose the currency of the price."
        : Quoted is not null && !FuturesMonth.TryParse(Month, house.Today, out _) ? $"'{Month}' is not a futures month such as KCH27."
        : null;

    private Parcel Parcel()
    {
        var price = Price is { } amount ? PricePerWeight.Of(amount, Domain.Measures.Currency.Of(Currency), Unit) : (PricePerWeight?)null;
        var differential = Price is null && Quoted is { } quoted && FuturesMonth.TryParse(Month, house.Today, out var month)
            ? Differential.Of(month, quoted)
            : (Differential?)null;
        var origin = string.IsNullOrWhiteSpace(Origin) ? null : Origin.Trim().ToUpper(CultureInfo.InvariantCulture);
        return new Parcel(price, differential, Delivery, Place, origin, Weight.FromKilograms(QuantityKg), Bags);
    }
}
