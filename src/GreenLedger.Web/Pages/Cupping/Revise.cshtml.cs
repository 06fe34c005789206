using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

[InArea("Cupping, leading")]
public sealed class ReviseModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingForm> Id { get; set; }

    [BindProperty]
    public ReviseForm Input { get; set; } = new();

    public string Name { get; private set; } = "";

    public string LightName { get; private set; } = "";

    public string HeavyName { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } form)
        {
            return NotFound();
        }

        Describe(form);
        Input = ReviseForm.Of(form.Rules);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } form)
        {
            return NotFound();
        }

        await db.RequireNewestAsync(form, cancellationToken);
        var revised = form.Revise(Input.Apply(form.Rules), Input.Reason ?? "");
        db.Add(revised);
        await db.SaveChangesAsync(cancellationToken);
        Say("The new revision can be chosen for the next session.");
        return RedirectToPage("Form", new { revised.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Describe((await FindAsync(cancellationToken))!);

    private Task<CuppingForm?> FindAsync(CancellationToken cancellationToken) =>
        db.CuppingForms.SingleOrDefaultAsync(form => form.Id == Id, cancellationToken);

    private void Describe(CuppingForm form)
    {
        Name = form.ToString();
        LightName = form.Rules.Deductions[0].Name;
        HeavyName = form.Rules.Deductions[1].Name;
    }

    public sealed class ReviseForm
    {
        [Display(Name = "Lowest mark")]
        public decimal LowestMark { get; set; }

        [Display(Name = "Lighter deduction")]
        public decimal LightPoints { get; set; }

        [Display(Name = "Heavier deduction")]
        public decimal HeavyPoints { get; set; }

        public decimal Slope { get; set; }

        public decimal Intercept { get; set; }

        [Display(Name = "Round to")]
        public decimal RoundTo { get; set; }

        [Display(Name = "Deductions with fewer cups")]
        public bool DeductionsPerFiveCups { get; set; }

        public string? Reason { get; set; }

        internal static ReviseForm Of(FormRules rules) => new()
        {
            LowestMark = rules.Scales.First().Lowest,
            LightPoints = rules.Deductions[0].PointsPerCup,
            HeavyPoints = rules.Deductions[1].PointsPerCup,
            Slope = rules.Slope,
            Intercept = rules.Intercept,
            RoundTo = rules.RoundTo,
            DeductionsPerFiveCups = rules.DeductionsPerFiveCups,
        };

        internal FormRules Apply(FormRules rules) => rules with
        {
            Attributes = [.. rules.Attributes.Select(line => line.MarkedBy == MarkedBy.Scale ? line with { Lowest = LowestMark } : line)],
            Deductions = [rules.Deductions[0] with { PointsPerCup = LightPoints }, rules.Deductions[1] with { PointsPerCup = HeavyPoints }],
            Slope = Slope,
            Intercept = Intercept,
            RoundTo = RoundTo,
            DeductionsPerFiveCups = DeductionsPerFiveCups,
        };
    }
}
