using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Settings;

public sealed class IndexModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public HouseForm Input { get; set; } = new();

    public Id<House> HouseId { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var house = await db.Houses.AsNoTracking().SingleAsync(cancellationToken);
        HouseId = house.Id;
        Input = new HouseForm
        {
            Version = house.Version,
            Name = house.Name,
            Currency = house.Currency.Code,
            ShowsPounds = house.ShowsPounds,
            ReproducibilityPoints = house.Reproducibility.Points,
            RepeatabilityPoints = house.Repeatability.Points,
            LongYears = house.LongYears,
            TimeZone = house.TimeZone,
        };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var house = await db.Houses.SingleAsync(cancellationToken);
        OpenedOn(house, Input.Version);
        house.Rename(Input.Name);
        house.UseCurrency(Currency.Of(Input.Currency));
        house.ShowWeightsIn(Input.ShowsPounds);
        house.Expect(Score.Of(Input.ReproducibilityPoints), Score.Of(Input.RepeatabilityPoints));
        house.ReadClocksIn(Input.TimeZone);
        house.CountInterestIn365DaysFor(Input.LongYears);
        await db.SaveChangesAsync(cancellationToken);
        Say("The settings of the house are saved.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        HouseId = await db.Houses.Select(house => house.Id).SingleAsync(cancellationToken);

    public sealed class HouseForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "Please name the house.")]
        [Display(Name = "Name of the house")]
        public string Name { get; set; } = "";

        [Required(ErrorMessage = "Choose the currency of the house.")]
        public string Currency { get; set; } = "";

        [Display(Name = "Weights are shown in")]
        public bool ShowsPounds { get; set; }

        [Required(ErrorMessage = "Choose the time zone of the house.")]
        [Display(Name = "Time zone")]
        public string TimeZone { get; set; } = "";

        [Display(Name = "Reproducibility, points")]
        public decimal ReproducibilityPoints { get; set; }

        [Display(Name = "Repeatability, points")]
        public decimal RepeatabilityPoints { get; set; }

        [Display(Name = "Currencies with an interest year of 365 days")]
        public string? LongYears { get; set; }
    }
}
