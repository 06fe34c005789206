using System.ComponentModel.DataAnnotations;
using System.Globalization;
using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>One lot of a count on a phone, without what the ledger says; several people count at once, each another lot.</summary>
public sealed class CountLineModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<CountLine> Id { get; set; }

    [BindProperty]
    public LineForm Input { get; set; } = new();

    public StockCount Count { get; private set; } = null!;

    public Lot Lot { get; private set; } = null!;

    public string Warehouse { get; private set; } = "";

    private IQueryable<StockCount> Counts => db.StockCounts.Where(count => count.Lines.Any(line => line.Id == Id));

    private CountLine Line => Count.Lines.Single(line => line.Id == Id);

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        (Input.Bags, Input.WeighedKg, Input.Reason) = (Line.CountedBags, Line.Counted?.Kilograms, Line.Reason);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var seen = Input.Seen;
        await LoadAsync(cancellationToken);
        var (bags, weighed) = (Input.Bags!.Value, Input.WeighedKg!.Value);
        Rule.Require(weighed is >= 0m and <= 100_000_000m, "The weight lies between 0 and 100,000,000 kg.", nameof(Input.WeighedKg));
        Rule.Require(seen == Stands(), $"Somebody wrote down {Stands()} for this lot meanwhile. Look again, and save once more where yours is right.", "");
        var count = await Counts.Whole().SingleAsync(cancellationToken);
        count.Count(Id, bags, Weight.FromKilograms(weighed), Input.Reason, User.Person());
        await db.SaveChangesAsync(cancellationToken);
        var next = count.Lines.Where(line => !line.IsCounted).ToList();
        Say($"{Lot.Ref}: {Figures.Count(bags, "bag", "bags")} and {Figures.ExactWeight(Weight.FromKilograms(weighed), false)} are written down. "
            + (next.Count == 0 ? "Every lot is counted." : $"{Figures.Count(next.Count, "lot is", "lots are")} still to count."));
        return next.Count == 0 ? RedirectToPage("Count", new { id = count.Id }) : RedirectToPage(new { id = next[0].Id });
    }

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => Counts.AnyAsync(cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Count = await Counts.AsNoTracking().Whole().SingleAsync(cancellationToken);
        var holding = Line.HoldingId;
        Lot = await db.Holdings.Where(one => one.Id == holding).Join(db.Lots, one => one.LotId, lot => lot.Id, (_, lot) => lot).AsNoTracking().SingleAsync(cancellationToken);
        Warehouse = await db.Warehouses.Where(one => one.Id == Count.WarehouseId).Select(one => one.Name).SingleAsync(cancellationToken);
        ModelState.Remove("Input.Seen");
        Input.Seen = Stands();
    }

    /// <summary>What stands on the line now, in words.</summary>
    private string Stands() => Line.Counted is { } counted
        ? string.Create(CultureInfo.InvariantCulture, $"{Line.CountedBags} bags and {counted.Kilograms:0.######} kg")
        : "nothing";

    public sealed class LineForm
    {
        /// <summary>What stood on the line when the form was opened.</summary>
        public string? Seen { get; set; }

        [Required(ErrorMessage = "How many bags are there? 0 where nothing is.")]
        public int? Bags { get; set; }

        [Required(ErrorMessage = "How many kilograms are there? 0 where nothing is.")]
        [Display(Name = "Weighed (kg)")]
        public decimal? WeighedKg { get; set; }

        [Display(Name = "Remarks")]
        public string? Reason { get; set; }
    }
}
