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

/// <summary>A sample that was asked for is here.</summary>
public sealed class ReceiveModel(LedgerContext db, HouseZone house) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Sample> Id { get; set; }

    [BindProperty]
    public ReceiveForm Input { get; set; } = new();

    public string LabelCode { get; private set; } = "";

    public decimal? AskedGrams { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.Samples.AsNoTracking().SingleOrDefaultAsync(sample => sample.Id == Id, cancellationToken) is not { } sample)
        {
            return NotFound();
        }

        if (sample.IsReceived)
        {
            return RedirectToPage("Sample", new { Id });
        }

        await LoadAsync(cancellationToken);
        Input = new ReceiveForm { ReceivedOn = house.Today, Version = sample.Version };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.Samples.SingleOrDefaultAsync(sample => sample.Id == Id, cancellationToken) is not { } sample)
        {
            return NotFound();
        }

        OpenedOn(sample, Input.Version);
        sample.Receive(Input.ReceivedOn!.Value, Weight.FromGrams(Input.WeightGrams!.Value), Input.BagCondition, User.Person(), house.Zone);
        await db.SaveChangesAsync(cancellationToken);
        Say($"Sample {sample.LabelCode} is here. Grade it next.");
        return RedirectToPage("Sample", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var sample = await db.Samples.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        (LabelCode, AskedGrams) = (sample?.LabelCode ?? "", sample?.AskedWeight?.Grams);
    }

    public sealed class ReceiveForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "Give the day on which the sample arrived.")]
        [Display(Name = "Received on")]
        public DateOnly? ReceivedOn { get; set; }

        [Required(ErrorMessage = "Weigh the sample: how many grams of green coffee?")]
        [Display(Name = "Green coffee (g)")]
        public decimal? WeightGrams { get; set; }

        [Display(Name = "Condition of the bag")]
        public string? BagCondition { get; set; }
    }
}
