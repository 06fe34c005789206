using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

internal sealed class CorrectModel(LedgerContext db, Reader reader, HouseZone house) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Sample> Id { get; set; }

    [BindProperty]
    public CorrectForm Input { get; set; } = new();

    public string LabelCode { get; private set; } = "";

    /// <summary>A bag that is not here yet has neither a day of receipt nor a weight to correct.</summary>
    public bool IsReceived { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.Samples.AsNoTracking().SingleOrDefaultAsync(sample => sample.Id == Id, cancellationToken) is not { } sample || (await reader.SealAsync()).Covers(sample.Id.Value))
        {
            return NotFound();
        }

        (LabelCode, IsReceived) = (sample.LabelCode, sample.IsReceived);
        Input = new CorrectForm
        {
            Kind = sample.Kind,
            ReceivedOn = sample.ReceivedOn,
            WeightGrams = sample.Weight?.Grams,
            Note = sample.Note,
            Version = sample.Version,
        };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.Samples.SingleOrDefaultAsync(sample => sample.Id == Id, cancellationToken) is not { } sample)
        {
            return NotFound();
        }

        OpenedOn(sample, Input.Version);
        if (sample.IsReceived)
        {
            Rule.Require(Input.ReceivedOn is not null, "Give the day on which the sample arrived.", nameof(Input.ReceivedOn));
            Rule.Require(Input.WeightGrams is not null, "Weigh the sample: how many grams of green coffee?", nameof(Input.WeightGrams));
            sample.Correct(Input.Kind, Input.ReceivedOn.Value, Weight.FromGrams(Input.WeightGrams.Value), Input.Note, house.Zone);
        }
        else
        {
            sample.Correct(Input.Kind, Input.Note);
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"Sample {sample.LabelCode} is corrected.");
        return RedirectToPage("Sample", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var sample = await db.Samples.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        (LabelCode, IsReceived) = (sample?.LabelCode ?? "", sample?.IsReceived == true);
    }

    public sealed class CorrectForm
    {
        public int Version { get; set; }

        public SampleKind Kind { get; set; }

        [Display(Name = "Received on")]
        public DateOnly? ReceivedOn { get; set; }

        [Display(Name = "Green coffee (g)")]
        public decimal? WeightGrams { get; set; }

        public string? Note { get; set; }
    }
}
