using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Samples;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Samples;

public sealed class NewModel(LedgerContext db, HouseZone house) : FormPage
{
    private const int Proposed = 100;

    [BindProperty]
    public NewForm Input { get; set; } = new();

    public IReadOnlyList<Lot> Lots { get; private set; } = [];

    public async Task OnGetAsync(Id<Lot>? lot, CancellationToken cancellationToken)
    {
        Input.ReceivedOn = house.Today;
        Input.Lot = lot is null ? null : await db.Lots.Where(one => one.Id == lot).Select(one => one.Ref).SingleOrDefaultAsync(cancellationToken);
        await LoadAsync(cancellationToken);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var lot = await SampleLots.FindAsync(db, Input.Lot!.Trim(), nameof(Input.Lot), cancellationToken);
        var labels = await db.NewLabelsAsync(cancellationToken);
        var sample = new Sample(lot, Input.Kind, labels.Next(), Input.ReceivedOn!.Value, Weight.FromGrams(Input.WeightGrams!.Value), Input.Note, house.Zone)
            .ReceivedAs(Input.BagCondition, User.Person());
        db.Add(sample);
        await db.SaveChangesAsync(cancellationToken);
        Say($"Write {sample.LabelCode} on the bag.");
        return RedirectToPage("Sample", new { sample.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Lots = await db.Lots.AsNoTracking().OrderByDescending(lot => lot.Id).Take(Proposed).ToListAsync(cancellationToken);

    public sealed class NewForm
    {
        [Required(ErrorMessage = "Say which lot this sample stands for.")]
        public string? Lot { get; set; }

        public SampleKind Kind { get; set; }

        [Required(ErrorMessage = "Give the day on which the sample arrived.")]
        [Display(Name = "Received on")]
        public DateOnly? ReceivedOn { get; set; }

        [Required(ErrorMessage = "Weigh the sample: how many grams of green coffee?")]
        [Display(Name = "Green coffee (g)")]
        public decimal? WeightGrams { get; set; }

        [Display(Name = "Condition of the bag")]
        public string? BagCondition { get; set; }

        public string? Note { get; set; }
    }
}
