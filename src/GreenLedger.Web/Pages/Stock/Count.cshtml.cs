using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Documents.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Fills a count on a phone or a screen, approves its differences, or gives it up. Whatever is done, what was typed is judged with it.</summary>
[RequestFormLimits(ValueCountLimit = 65_536)]
public sealed class CountModel(LedgerContext db, CountQuery query, CountActs acts) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<StockCount> Id { get; set; }

    [BindProperty]
    public CountForm Input { get; set; } = new();

    public StockCount Count { get; private set; } = null!;

    public string Warehouse { get; private set; } = "";

    public IReadOnlyDictionary<Id<Holding>, Lot> Lots { get; private set; } = new Dictionary<Id<Holding>, Lot>();

    public bool NeedsSecondPerson { get; private set; } = true;

    /// <summary>What was looked for and is not on this count.</summary>
    public string? Sought { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.Version = Count.Version;
    }

    /// <summary>Opens the line of the lot whose label was read or whose reference was typed.</summary>
    public async Task<IActionResult> OnGetFindAsync(string? lot, CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, lot ?? "", cancellationToken) is { } line)
        {
            return RedirectToPage("CountLine", new { id = line });
        }

        await OnGetAsync(cancellationToken);
        Sought = lot;
        Input.Lot = lot;
        return Page();
    }

    /// <summary>The sheet to print, with or without what the ledger says.</summary>
    public async Task<IActionResult> OnGetSheetAsync(bool book, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var house = await db.Houses.Select(one => one.Name).SingleAsync(cancellationToken);
        var address = $"{Request.Scheme}://{Request.Host}{Request.PathBase}{Url.Page("Count", new { Id })}";
        var lines = Count.Lines.Select(line => new SheetLine(Lots[line.HoldingId].Ref, Lots[line.HoldingId].Name, line.BookBags, line.Book)).OrderBy(line => line.Ref, StringComparer.OrdinalIgnoreCase);
        var file = new MemoryStream();
        CountSheet.Write(new CountOnPaper(house, Warehouse, Count.On, address, [.. lines], book), file);
        file.Position = 0;
        return File(file, CountSheet.MediaType);
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => ChangeAsync(count =>
    {
        Take(count);
        return Task.FromResult("Saved.");
    }, cancellationToken);

    public Task<IActionResult> OnPostFoundAsync(CancellationToken cancellationToken) => ChangeAsync(async count =>
    {
        Take(count);
        await acts.FindAsync(count, new FoundLot(Input.Lot, Input.Bags, Input.WeighedKg, Input.Reason), User.Person(), cancellationToken);
        return $"{Input.Lot!.Trim()} is on the count.";
    }, cancellationToken);

    public Task<IActionResult> OnPostApproveAsync(CancellationToken cancellationToken) => ChangeAsync(async count =>
    {
        Take(count);
        var movements = await acts.ApproveAsync(count, User.Person(), cancellationToken);
        return movements.Count == 0 ? "Approved: the ledger is right." : $"Approved: {Display.Figures.Count(movements.Count, "difference is", "differences are")} in the ledger.";
    }, cancellationToken);

    public Task<IActionResult> OnPostDropAsync(CancellationToken cancellationToken) => ChangeAsync(count =>
    {
        count.Drop(Input.DropReason ?? "");
        return Task.FromResult("Given up. The ledger stays as it is.");
    }, cancellationToken);

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.StockCounts.AnyAsync(one => one.Id == Id, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Count = await db.StockCounts.AsNoTracking().Whole().SingleAsync(one => one.Id == Id, cancellationToken);
        var ids = Count.Lines.Select(line => line.HoldingId).ToList();
        Lots = await db.Holdings.Where(holding => ids.Contains(holding.Id)).Join(db.Lots, holding => holding.LotId, lot => lot.Id, (holding, lot) => new { holding.Id, lot }).ToDictionaryAsync(one => one.Id, one => one.lot, cancellationToken);
        Warehouse = await db.Warehouses.Where(one => one.Id == Count.WarehouseId).Select(one => one.Name).SingleAsync(cancellationToken);
        NeedsSecondPerson = (await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken)).CountNeedsSecondPerson;
        if (Input.Lines.Count == 0)
        {
            Input.Lines = [.. Count.Lines.Select(line => new LineForm { Id = line.Id, Bags = line.CountedBags, WeighedKg = line.Counted?.Kilograms, Reason = line.Reason })];
        }
    }

    private async Task<IActionResult> ChangeAsync(Func<StockCount, Task<string>> act, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var count = await db.StockCounts.Whole().SingleAsync(one => one.Id == Id, cancellationToken);
        OpenedOn(count, Input.Version);
        var said = await act(count);
        await db.SaveChangesAsync(cancellationToken);
        Say(said);
        return count.DroppedBecause is null ? RedirectToPage() : RedirectToPage("Counts");
    }

    /// <summary>Writes down what was typed and differs from what stands there; whoever only looks has not counted.</summary>
    private void Take(StockCount count)
    {
        foreach (var (at, line) in Input.Lines.Index())
        {
            var known = count.Lines.FirstOrDefault(one => one.Id == line.Id);
            if (known is null || (line.Bags is null && line.WeighedKg is null && string.IsNullOrWhiteSpace(line.Reason)))
            {
                continue;
            }

            var lot = Lots[known.HoldingId].Ref;
            Rule.Require(line.Bags is not null, $"{lot}: how many bags are there? 0 where nothing is.", $"Lines[{at}].Bags");
            Rule.Require(line.WeighedKg is >= 0m and <= 100_000_000m, $"{lot}: how many kilograms are there? 0 where nothing is.", $"Lines[{at}].WeighedKg");
            var weighed = Weight.FromKilograms(line.WeighedKg.Value);
            if (known.CountedBags != line.Bags || known.Counted != weighed || (known.Reason ?? "") != (line.Reason ?? "").Trim())
            {
                count.Count(line.Id, line.Bags.Value, weighed, line.Reason, User.Person());
            }
        }
    }

    public sealed class CountForm
    {
        public int Version { get; set; }

        public List<LineForm> Lines { get; set; } = [];

        public string? DropReason { get; set; }

        [Display(Name = "Lot found here")]
        public string? Lot { get; set; }

        [Display(Name = "Bags found")]
        public int? Bags { get; set; }

        [Display(Name = "Kilograms found")]
        public decimal? WeighedKg { get; set; }

        [Display(Name = "Remarks on what was found")]
        public string? Reason { get; set; }
    }

    public sealed class LineForm
    {
        public Id<CountLine> Id { get; set; }

        public int? Bags { get; set; }

        public decimal? WeighedKg { get; set; }

        public string? Reason { get; set; }
    }
}
