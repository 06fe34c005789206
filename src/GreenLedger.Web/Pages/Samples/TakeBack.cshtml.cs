using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Samples;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

/// <summary>Goes back one step on a sample's way, with a reason.</summary>
public sealed class TakeBackModel(LedgerContext db, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Sample> Id { get; set; }

    [BindProperty]
    public TakeBackForm Input { get; set; } = new();

    public string LabelCode { get; private set; } = "";

    public string StepWord { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return LabelCode.Length == 0 ? NotFound() : Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.Samples.Include(sample => sample.SetBacks).SingleOrDefaultAsync(sample => sample.Id == Id, cancellationToken) is not { } sample)
        {
            return NotFound();
        }

        OpenedOn(sample, Input.Version);
        var step = sample.Step.Word();
        sample.TakeBack(Input.Reason!, await db.IsUsedAsync(sample, cancellationToken), User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say($"Sample {sample.LabelCode} is no longer {step}: it stands as {sample.Step.Word()}.");
        return RedirectToPage("Sample", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        if (await db.Samples.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is { } sample)
        {
            (LabelCode, StepWord, Input.Version) = (sample.LabelCode, sample.Step.Word(), sample.Version);
        }
    }

    public sealed class TakeBackForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "Say why: the reason stays with the sample.")]
        public string? Reason { get; set; }
    }
}
