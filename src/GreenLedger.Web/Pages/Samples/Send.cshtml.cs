using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

/// <summary>Writes down that the sender has handed a sample to a courier.</summary>
public sealed class SendModel(LedgerContext db, HouseZone house) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Sample> Id { get; set; }

    [BindProperty]
    public SendForm Input { get; set; } = new();

    public string LabelCode { get; private set; } = "";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.Samples.AsNoTracking().SingleOrDefaultAsync(sample => sample.Id == Id, cancellationToken) is not { } sample)
        {
            return NotFound();
        }

        LabelCode = sample.LabelCode;
        Input = new SendForm
        {
            SentOn = sample.SentOn ?? house.Today,
            Courier = sample.Courier,
            TrackingNumber = sample.TrackingNumber,
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
        sample.Send(Input.SentOn!.Value, Input.Courier, Input.TrackingNumber, User.Person());
        await db.SaveChangesAsync(cancellationToken);
        Say($"Sample {sample.LabelCode} is on the way.");
        return RedirectToPage("Sample", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        LabelCode = await db.Samples.Where(sample => sample.Id == Id).Select(sample => sample.LabelCode).SingleOrDefaultAsync(cancellationToken) ?? "";

    public sealed class SendForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "Give the day on which it was sent.")]
        [Display(Name = "Sent on")]
        public DateOnly? SentOn { get; set; }

        public string? Courier { get; set; }

        [Display(Name = "Tracking number")]
        public string? TrackingNumber { get; set; }
    }
}
