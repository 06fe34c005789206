using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>Beyond what a row of an offer list is set aside.</summary>
public sealed class ChecksModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public ChecksForm Input { get; set; } = new();

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var checks = await db.ListChecks.OfHouseAsync(cancellationToken);
        Input = new ChecksForm
        {
            Version = checks.Version,
            HeaviestBagKg = checks.HeaviestBag.Kilograms,
            HeaviestBigBagKg = checks.HeaviestBigBag.Kilograms,
            WeightTolerancePercent = checks.WeightTolerance.Points,
        };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var checks = await db.ListChecks.StatedAsync(cancellationToken);
        if (checks is null)
        {
            checks = new ListChecks();
            db.Add(checks);
        }
        else
        {
            OpenedOn(checks, Input.Version);
        }

        checks.Change(Weight.FromKilograms(Input.HeaviestBagKg!.Value), Weight.FromKilograms(Input.HeaviestBigBagKg!.Value), Percent.Of(Input.WeightTolerancePercent!.Value));
        await db.SaveChangesAsync(cancellationToken);
        Say("The next list is checked by these.");
        return RedirectToPage("Checks");
    }

    public sealed class ChecksForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "How many kilograms does the heaviest bag hold?")]
        [Range(0, 10_000, ErrorMessage = "A bag holds between 0 and 10,000 kg.")]
        [Display(Name = "Heaviest bag (kg)")]
        public decimal? HeaviestBagKg { get; set; }

        [Required(ErrorMessage = "How many kilograms does the heaviest big bag hold?")]
        [Range(0, 10_000, ErrorMessage = "A big bag holds between 0 and 10,000 kg.")]
        [Display(Name = "Heaviest big bag (kg)")]
        public decimal? HeaviestBigBagKg { get; set; }

        [Required(ErrorMessage = "How many per cent?")]
        [Range(0, 10, ErrorMessage = "The tolerance lies between 0 and 10 %.")]
        [Display(Name = "Tolerance of weights (%)")]
        public decimal? WeightTolerancePercent { get; set; }
    }
}
