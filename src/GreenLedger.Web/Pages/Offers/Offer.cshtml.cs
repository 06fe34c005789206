using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Data.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>One offer: what is asked, what it costs in the warehouse, and whether it can still be taken.</summary>
public sealed class OfferModel(LedgerContext db, LotQuery lots, LandedCostsQuery landedCosts, HouseZone house) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Offer> Id { get; set; }

    [BindProperty]
    public LeastLotForm Input { get; set; } = new();

    public OfferView View { get; private set; } = null!;

    /// <summary>Null while no house is set up.</summary>
    public LandedCost? Cost { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.LeastBags = View?.Offer.LeastBags;
        return View is null ? NotFound() : Page();
    }

    public Task<IActionResult> OnPostSellAsync(CancellationToken cancellationToken) =>
        ChangeAsync((offer, on) => offer.Sell(on), "The offer is marked as sold.", cancellationToken);

    public Task<IActionResult> OnPostWithdrawAsync(CancellationToken cancellationToken) =>
        ChangeAsync((offer, on) => offer.Withdraw(on), "The offer is marked as withdrawn.", cancellationToken);

    public Task<IActionResult> OnPostReopenAsync(CancellationToken cancellationToken) =>
        ChangeAsync((offer, on) => offer.Reopen(on), "The offer stands again.", cancellationToken);

    public Task<IActionResult> OnPostLeastLotAsync(CancellationToken cancellationToken) =>
        ChangeAsync((offer, _) => offer.SellFrom(Input.LeastBags), "The least lot is saved.", cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        if (await lots.FindAsync(Id, cancellationToken) is { } view)
        {
            View = view;
            Cost = (await landedCosts.FindAsync(house.Today, cancellationToken))?.Of(Parcel.Of(view.Offer, view.Lot.CountryCode));
        }
    }

    private async Task<IActionResult> ChangeAsync(Action<Offer, DateOnly> change, string said, CancellationToken cancellationToken)
    {
        if (await db.Offers.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } offer)
        {
            return NotFound();
        }

        change(offer, house.Today);
        await db.SaveChangesAsync(cancellationToken);
        Say(said);
        return RedirectToPage(new { Id });
    }

    public sealed class LeastLotForm
    {
        [Display(Name = "Least lot (bags)")]
        public int? LeastBags { get; set; }
    }
}
