using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>From when Regulation (EU) 2023/1115 applies to the house, and how long it keeps evidence.</summary>
public sealed class DiligenceHabitsModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public HabitsForm Input { get; set; } = new();

    public DiligenceHabits Stated { get; private set; } = new();

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = new HabitsForm
        {
            Version = Stated.Version,
            Size = Stated.Size,
            AppliesGenerally = Stated.AppliesGenerally,
            AppliesToSmall = Stated.AppliesToSmall,
            NotDeforestedAfter = Stated.NotDeforestedAfter,
            KeepYears = Stated.KeepYears,
            ExportMegabytes = Stated.ExportMegabytes,
            MostPerHectare = Stated.MostPerHectare,
            Source = Stated.Source,
        };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var habits = await db.ToChangeAsync<DiligenceHabits>(Input.Version, cancellationToken);
        habits.Keep(new DiligenceTerms(
            Input.Size, Input.AppliesGenerally!.Value, Input.AppliesToSmall!.Value, Input.NotDeforestedAfter!.Value, Input.KeepYears!.Value, Input.ExportMegabytes!.Value, Input.Source, Input.MostPerHectare!.Value));
        await db.SaveChangesAsync(cancellationToken);
        Say("Due diligence goes by these from now on.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Stated = await db.DiligenceHabits.StatedAsync(cancellationToken) ?? new DiligenceHabits();

    public sealed class HabitsForm
    {
        public int Version { get; set; }

        [Display(Name = "The house is")]
        public FirmSize? Size { get; set; }

        [Display(Name = "Applies to operators generally from")]
        [Required(ErrorMessage = "From which day?")]
        public DateOnly? AppliesGenerally { get; set; }

        [Display(Name = "Applies to small ones from")]
        [Required(ErrorMessage = "From which day?")]
        public DateOnly? AppliesToSmall { get; set; }

        [Display(Name = "Land not deforested after")]
        [Required(ErrorMessage = "After which day?")]
        public DateOnly? NotDeforestedAfter { get; set; }

        [Display(Name = "Evidence is kept for (years)")]
        [Required(ErrorMessage = "For how many years?")]
        public int? KeepYears { get; set; }

        [Display(Name = "Largest file of plots (MB)")]
        [Required(ErrorMessage = "How many megabytes?")]
        public int? ExportMegabytes { get; set; }

        [Display(Name = "A hectare gives at most (kg green)")]
        [Required(ErrorMessage = "How many kilograms?")]
        public int? MostPerHectare { get; set; }

        [Display(Name = "Where this was read")]
        public string? Source { get; set; }
    }
}
