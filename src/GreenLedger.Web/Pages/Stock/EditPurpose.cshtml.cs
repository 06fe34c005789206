using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Names a purpose or says it anew.</summary>
public sealed class EditPurposeModel(LedgerContext db, PurposeActs acts) : FormPage
{
    [BindProperty]
    public PurposeForm Input { get; set; } = new();

    /// <summary>None for a new one.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Purpose>? Id { get; set; }

    public Purpose? Purpose { get; private set; }

    public IReadOnlyList<string> Families { get; private set; } = [];

    public IReadOnlyList<string> Blends { get; private set; } = [];

    protected override bool IsThere => Id is null || Purpose is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = Purpose is { } known ? PurposeForm.Of(known) : new PurposeForm();
        return IsThere ? Page() : NotFound();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var known = Id is { } id ? await db.Purposes.Whole().SingleOrDefaultAsync(purpose => purpose.Id == id, cancellationToken) : null;
        if (Id is not null && known is null)
        {
            return NotFound();
        }

        if (known is not null)
        {
            OpenedOn(known, Input.Version);
        }

        var purpose = await acts.StateAsync(known, Input.Terms(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{purpose.Name} is saved.");
        return RedirectToPage("Purpose", new { purpose.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Purpose = Id is { } id ? await db.Purposes.AsNoTracking().SingleOrDefaultAsync(purpose => purpose.Id == id, cancellationToken) : null;
        Families = await db.Descriptors.Where(word => !word.IsRetired).Select(word => word.Family).Distinct().OrderBy(family => family).ToListAsync(cancellationToken);
        Blends = await db.Purposes.Where(purpose => purpose.Blend != null).Select(purpose => purpose.Blend!).Distinct().OrderBy(blend => blend).ToListAsync(cancellationToken);
    }

    public sealed class PurposeForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "What is the purpose called?")]
        public string? Name { get; set; }

        [Required(ErrorMessage = "How many kilograms a week? 0 where you do not know yet.")]
        [Range(0, 1_000_000, ErrorMessage = "The use of a week lies between 0 and 1,000,000 kg.")]
        [Display(Name = "Use of a week (kg)")]
        public decimal? WeeklyUseKg { get; set; }

        public ProcessFamily? Process { get; set; }

        [Range(0, 100, ErrorMessage = "The least score lies between 0 and 100 points.")]
        [Display(Name = "Least score")]
        public decimal? LeastScore { get; set; }

        [Display(Name = "Flavour family")]
        public string? Flavour { get; set; }

        [Display(Name = "Component of the blend")]
        public string? Blend { get; set; }

        [Range(0, 100, ErrorMessage = "The share lies above 0 and at most at 100 %.")]
        [Display(Name = "Share (%)")]
        public decimal? SharePercent { get; set; }

        internal PurposeTerms Terms() => new(
            Name!, Process, LeastScore is { } least ? Score.Of(least) : null, Flavour, Weight.FromKilograms(WeeklyUseKg!.Value), Blend, SharePercent is { } share ? Percent.Of(share) : null);

        internal static PurposeForm Of(Purpose purpose) => new()
        {
            Version = purpose.Version,
            Name = purpose.Name,
            WeeklyUseKg = purpose.WeeklyUse.Kilograms,
            Process = purpose.Process,
            LeastScore = purpose.LeastScore?.Points,
            Flavour = purpose.Flavour,
            Blend = purpose.Blend,
            SharePercent = purpose.Share?.Points,
        };
    }
}
