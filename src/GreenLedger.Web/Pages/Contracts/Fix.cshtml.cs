using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>Fixes some or all of what is open.</summary>
public sealed class FixModel(LedgerContext db, FixingsQuery fixings, HouseZone house, TimeProvider clock) : ContractPage(db, house, clock)
{
    [BindProperty]
    public FixForm Input { get; set; } = new();

    /// <summary>The newest quote of the month that is open; null where there is none.</summary>
    public FuturesQuote? Quote { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        (Input.Version, Input.On) = (Shown!.Version, Today);
        return Page();
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => ActAsync(Input.Version, contract =>
    {
        var weight = Input.WeightKg is { } kilograms ? Weight.FromKilograms(kilograms) : (Weight?)null;
        contract.Fix(new FixingOrder(Input.On!.Value, Input.Lots, weight, Input.Level!.Value, Input.Method), User.Person(), Now);
        return contract.Price == PriceState.Fixed ? $"{contract.Ref} is fixed." : $"Part of {contract.Ref} is fixed.";
    }, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        await base.LoadAsync(cancellationToken);
        Quote = Shown?.Position is { } position ? (await fixings.QuotesAsync(Today, cancellationToken)).Find(position.Month, Today) : null;
    }

    public sealed class FixForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "On which day was it fixed?")]
        public DateOnly? On { get; set; }

        [Display(Name = "Lots")]
        public int? Lots { get; set; }

        [Display(Name = "Weight, kg")]
        [Range(0, 100_000_000, ErrorMessage = "The weight is 0 kg or more.")]
        public decimal? WeightKg { get; set; }

        [Required(ErrorMessage = "At which level was it fixed?")]
        public decimal? Level { get; set; }

        [Display(Name = "How it was executed")]
        public string? Method { get; set; }
    }
}
