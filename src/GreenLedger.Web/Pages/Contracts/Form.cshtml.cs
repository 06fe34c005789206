using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>One standard form, or a new one.</summary>
public sealed class FormModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<StandardForm>? Id { get; set; }

    [BindProperty]
    public StandardFormForm Input { get; set; } = new();

    /// <summary>Null for a new one.</summary>
    public StandardForm? Form { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Id is not null && Form is null)
        {
            return NotFound();
        }

        Input = Form is null ? new StandardFormForm() : StandardFormForm.Of(Form);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var form = Form;
        if (Id is not null && form is null)
        {
            return NotFound();
        }

        if (form is null)
        {
            form = new StandardForm(Input.Name ?? "", Input.Edition ?? "");
            db.Add(form);
        }
        else
        {
            OpenedOn(form, Input.Version);
            form.Call(Input.Name ?? "", Input.Edition);
        }

        form.Allow(Percent.Of(Input.FranchisePercent), Percent.Of(Input.TolerancePercent));
        form.Give(Input.WeighWithinDays, Input.QualityClaimDays, Input.OtherClaimDays, Input.Arbitration, Input.QualityFromClearance, Input.WeighFrom);
        await db.StandardForms.RequireOneEditionAsync(form, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{form.Name} is saved.");
        return RedirectToPage("Forms");
    }

    public Task<IActionResult> OnPostPutAwayAsync(CancellationToken cancellationToken) => ChangeAsync(form => form.PutAway(), "is put away: drafts do not suggest it.", cancellationToken);

    public Task<IActionResult> OnPostTakeUpAsync(CancellationToken cancellationToken) => ChangeAsync(form => form.TakeUp(), "is in use again.", cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Form = Id is null ? null : await db.StandardForms.SingleOrDefaultAsync(form => form.Id == Id, cancellationToken);

    private async Task<IActionResult> ChangeAsync(Action<StandardForm> act, string said, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Form is null)
        {
            return NotFound();
        }

        act(Form);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{Form.Name} {said}");
        return RedirectToPage("Forms");
    }

    public sealed class StandardFormForm
    {
        public int Version { get; set; }

        [Display(Name = "Name")]
        [Required(ErrorMessage = "Name the form.")]
        public string? Name { get; set; }

        public string? Edition { get; set; }

        public string? Arbitration { get; set; }

        [Display(Name = "Franchise, %")]
        public decimal FranchisePercent { get; set; }

        [Display(Name = "Tolerance, %")]
        public decimal TolerancePercent { get; set; }

        [Display(Name = "Weighed within, days")]
        public int? WeighWithinDays { get; set; }

        [Display(Name = "Days for weighing run from")]
        public WeighingStart WeighFrom { get; set; }

        [Display(Name = "Quality claim within, days")]
        public int? QualityClaimDays { get; set; }

        [Display(Name = "Other claim within, days")]
        public int? OtherClaimDays { get; set; }

        [Display(Name = "Days of a quality claim run from")]
        public bool QualityFromClearance { get; set; }

        public static StandardFormForm Of(StandardForm form) => new()
        {
            Version = form.Version,
            Name = form.Name,
            Edition = form.Edition,
            Arbitration = form.Arbitration,
            FranchisePercent = form.Franchise.Points,
            TolerancePercent = form.Tolerance.Points,
            WeighWithinDays = form.WeighWithinDays,
            QualityClaimDays = form.QualityClaimDays,
            OtherClaimDays = form.OtherClaimDays,
            QualityFromClearance = form.QualityFromClearance,
            WeighFrom = form.WeighFrom,
        };
    }
}
