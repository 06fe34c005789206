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

public sealed class AskModel(LedgerContext db, HouseZone house) : FormPage
{
    private const int MostProposed = 500;

    [BindProperty]
    public AskForm Input { get; set; } = new();

    /// <summary>Names to choose from; none for those who may not see who offers what.</summary>
    public IReadOnlyList<string> Suppliers { get; private set; } = [];

    public async Task OnGetAsync(Id<Lot>? lot, CancellationToken cancellationToken)
    {
        Input.AskedOn = house.Today;
        Input.Lots = lot is null ? null : await db.Lots.Where(one => one.Id == lot).Select(one => one.Ref).SingleOrDefaultAsync(cancellationToken);
        await LoadAsync(cancellationToken);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var request = new SampleAsking(Input.Supplier, Input.Kind, Weight.FromGrams(Input.WeightGrams!.Value), Input.AskedOn!.Value, Input.Note);
        var samples = await request.AskAsync(db, Input.Lots!.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries), User.Person(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{Figures.Count(samples.Count, "sample is", "samples are")} asked for. The letter below can be sent or copied.");
        return RedirectToPage("Letter", new { samples[0].Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Suppliers = User.MayRead("Offers")
            ? await db.Suppliers.OrderBy(supplier => supplier.Name).Select(supplier => supplier.Name).Take(MostProposed).ToListAsync(cancellationToken)
            : [];

    public sealed class AskForm
    {
        [Required(ErrorMessage = "Say of which lots you want samples.")]
        public string? Lots { get; set; }

        public string? Supplier { get; set; }

        public SampleKind Kind { get; set; }

        [Required(ErrorMessage = "How many grams do you ask for?")]
        [Display(Name = "Green coffee (g)")]
        public decimal? WeightGrams { get; set; } = 500m;

        [Required(ErrorMessage = "Give the day on which you ask.")]
        [Display(Name = "Asked on")]
        public DateOnly? AskedOn { get; set; }

        [Display(Name = "Note, not in the letter")]
        public string? Note { get; set; }
    }
}
