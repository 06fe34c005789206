using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Roasting;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

/// <summary>Writes down how much green coffee of a sample is left, with a reason.</summary>
internal sealed class LeftModel(LedgerContext db, Reader reader, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Sample> Id { get; set; }

    [BindProperty]
    public LeftForm Input { get; set; } = new();

    public string LabelCode { get; private set; } = "";

    /// <summary>What is left as it stands; null while the sample is not here.</summary>
    public Weight? Reckoned { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var sample = await db.Samples.SingleAsync(one => one.Id == Id, cancellationToken);
        OpenedOn(sample, Input.Version);
        sample.WeighLeft(Weight.FromGrams(Input.LeftGrams!.Value), Input.Reason, User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say($"{sample.Left!.Value.Grams:#,0.#} g are left of sample {sample.LabelCode}.");
        return RedirectToPage("Sample", new { Id });
    }

    protected override async Task<bool> IsThereAsync(CancellationToken cancellationToken) =>
        !(await reader.SealAsync()).Covers(Id.Value) && await db.Samples.AnyAsync(sample => sample.Id == Id, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var sample = await db.Samples.AsNoTracking().SingleAsync(one => one.Id == Id, cancellationToken);
        (LabelCode, Input.Version) = (sample.LabelCode, sample.Version);
        Reckoned = sample.IsReceived ? (await db.LeftOfAsync([sample], cancellationToken))[sample.Id] : null;
    }

    internal sealed class LeftForm
    {
        public int Version { get; set; }

        [Display(Name = "Left (g)")]
        [Required(ErrorMessage = "How many grams are left? 0 where nothing was kept.")]
        public decimal? LeftGrams { get; set; }

        [Required(ErrorMessage = "Say why: the reason stays with the sample.")]
        public string? Reason { get; set; }
    }
}
