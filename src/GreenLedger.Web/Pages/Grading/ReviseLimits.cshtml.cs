using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>Makes a new revision of physical limits.</summary>
[InArea("Cupping, leading")]
public sealed class ReviseLimitsModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<LimitsRevision> Id { get; set; }

    [BindProperty]
    public LimitsForm Input { get; set; } = new();

    public LimitsRevision Found { get; private set; } = null!;

    public GradingStandards Standards { get; private set; } = GradingStandards.Published;

    /// <summary>The defect tables that the full defects may be counted by, and the one that the limits name now.</summary>
    public IReadOnlyList<SelectListItem> Tables => [
        new("not named", ""),
        .. Standards.Newest.OrderBy(scheme => scheme.IsOfHouse).Select(scheme => new SelectListItem(scheme.Name, scheme.Code)),
        .. Found.Limits.CountedBy is { } other && Standards.All.All(scheme => scheme.Code != other) ? new[] { new SelectListItem(Found.Limits.Table, other) } : []];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.LimitsRevisions.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        Standards = await db.GradingStandardsAsync(cancellationToken);
        Input = LimitsForm.Of(found.Limits);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.LimitsRevisions.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        await db.RequireNewestAsync(found, cancellationToken);
        var revised = found.Revise(Input.Figures(await db.GradingStandardsAsync(cancellationToken)), Input.Reason);
        db.Add(revised);
        await db.SaveChangesAsync(cancellationToken);
        Say($"Grades are held against revision {revised.Revision} from now on.");
        return RedirectToPage("Limits", new { revised.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Found = await db.LimitsRevisions.AsNoTracking().SingleAsync(one => one.Id == Id, cancellationToken);
        Standards = await db.GradingStandardsAsync(cancellationToken);
    }

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.LimitsRevisions.AnyAsync(one => one.Id == Id, cancellationToken);

    public sealed class LimitsForm
    {
        [Required(ErrorMessage = "Give the lowest moisture.")]
        [Display(Name = "Lowest moisture (%)")]
        public decimal? LowestMoisture { get; set; }

        [Required(ErrorMessage = "Give the highest moisture.")]
        [Display(Name = "Highest moisture (%)")]
        public decimal? HighestMoisture { get; set; }

        [Display(Name = "Water activity below")]
        public decimal? WaterActivityBelow { get; set; }

        [Display(Name = "Category 1 full defects, at most")]
        public decimal? Category1 { get; set; }

        [Display(Name = "Category 2 full defects, at most")]
        public decimal? Category2 { get; set; }

        [Display(Name = "Defects in 300 g, at most")]
        public decimal? ExportDefects { get; set; }

        [Display(Name = "Quakers in 100 g roasted, at most")]
        public int? Quakers { get; set; }

        [Display(Name = "On the stated screen and above, at least (%)")]
        public decimal? LeastOnStatedScreen { get; set; }

        [Display(Name = "Full defects counted by")]
        public string? CountedBy { get; set; }

        [Display(Name = "It smells")]
        public bool NoForeignOdour { get; set; }

        [Display(Name = "Reason for the change")]
        public string? Reason { get; set; }

        internal static LimitsForm Of(PhysicalLimits limits) => new()
        {
            LowestMoisture = limits.LowestMoisture,
            HighestMoisture = limits.HighestMoisture,
            WaterActivityBelow = limits.WaterActivityBelow,
            Category1 = limits.Category1,
            Category2 = limits.Category2,
            ExportDefects = limits.ExportDefects,
            Quakers = limits.Quakers,
            LeastOnStatedScreen = limits.LeastOnStatedScreen,
            CountedBy = limits.CountedBy,
            NoForeignOdour = limits.NoForeignOdour,
        };

        internal PhysicalLimits Figures(GradingStandards standards) => new(
            "", LowestMoisture ?? 0m, HighestMoisture ?? 0m, WaterActivityBelow, Category1, Category2, Quakers, ExportDefects, NoForeignOdour, LeastOnStatedScreen, CountedBy: CountedBy, OwnTable: standards.OwnNameOf(CountedBy));
    }
}
