using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>A price that the seller named apart from a list.</summary>
public sealed class NewPriceModel(LedgerContext db, HouseZone house) : FormPage
{
    public static IReadOnlyList<SelectListItem> Ways { get; } =
    [
        new("an outright price", nameof(AskedWay.Outright)), new("a differential against a futures month", nameof(AskedWay.Differential)), new("nothing yet", nameof(AskedWay.Nothing)),
    ];

    public static IReadOnlyList<SelectListItem> Units { get; } =
        [.. Enum.GetValues<PriceUnit>().Select(unit => new SelectListItem(unit.Sign(), unit.ToString()))];

    [BindProperty(SupportsGet = true)]
    public Id<Offer> Id { get; set; }

    [BindProperty]
    public NewPriceForm Input { get; set; } = new();

    public string Ref { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.Offers.AsNoTracking().SingleOrDefaultAsync(offer => offer.Id == Id, cancellationToken) is not { } offer)
        {
            return NotFound();
        }

        Ref = offer.Ref;
        Input = NewPriceForm.Of(offer, house.Today);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.Offers.SingleOrDefaultAsync(offer => offer.Id == Id, cancellationToken) is not { } offer)
        {
            return NotFound();
        }

        OpenedOn(offer, Input.Version);
        offer.Ask(Input.Asking(house.Today), Input.On!.Value);
        await db.SaveChangesAsync(cancellationToken);
        Say($"The new price of {offer.Ref} is saved.");
        return RedirectToPage("Offer", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Ref = await db.Offers.Where(offer => offer.Id == Id).Select(offer => offer.Ref).SingleOrDefaultAsync(cancellationToken) ?? "";

    /// <summary>What kind of price an offer asks.</summary>
    public enum AskedWay
    {
        Outright = 0,
        Differential = 1,
        Nothing = 2,
    }

    public sealed class NewPriceForm
    {
        public int Version { get; set; }

        [Display(Name = "The seller asks")]
        public AskedWay Way { get; set; }

        [Display(Name = "Price")]
        public decimal? Price { get; set; }

        public string? Currency { get; set; }

        [Display(Name = "For one")]
        public PriceUnit Unit { get; set; }

        [Display(Name = "Differential")]
        public decimal? Differential { get; set; }

        [Display(Name = "Futures month")]
        public string? FuturesMonth { get; set; }

        [Required(ErrorMessage = "State the day from which this price holds.")]
        [Display(Name = "Holds from")]
        public DateOnly? On { get; set; }

        public static NewPriceForm Of(Offer offer, DateOnly today) => new()
        {
            Version = offer.Version,
            Way = offer.Price is not null ? AskedWay.Outright : offer.Differential is not null ? AskedWay.Differential : AskedWay.Nothing,
            Price = offer.Price?.Amount,
            Currency = offer.Price?.Currency.Code,
            Unit = offer.Price?.Unit ?? PriceUnit.Kilogram,
            Differential = offer.Differential?.Quoted,
            FuturesMonth = offer.Differential?.Month.ToString(),
            On = today,
        };

        /// <exception cref="RuleBrokenException">A part of the price that was chosen is missing or is none.</exception>
        public Asking Asking(DateOnly today)
        {
            switch (Way)
            {
                case AskedWay.Outright:
                    Rule.Require(Price is not null, "Type the price.", nameof(Price));
                    return Domain.Offers.Asking.Outright(PricePerWeight.Of(Price.Value, Domain.Measures.Currency.Of(Currency), Unit));
                case AskedWay.Differential:
                    Rule.Require(Differential is not null, "Type the differential.", nameof(Differential));
                    Rule.Require(Domain.Measures.FuturesMonth.TryParse(FuturesMonth, today, out var month), $"'{FuturesMonth}' is not a futures month such as KCH27 or RCK27.", nameof(FuturesMonth));
                    return Domain.Offers.Asking.Against(Domain.Measures.Differential.Of(month, Differential.Value));
                default:
                    return Domain.Offers.Asking.Nothing;
            }
        }
    }
}
