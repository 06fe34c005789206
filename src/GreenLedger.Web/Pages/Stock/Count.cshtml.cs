using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Fills a count on a phone or a screen, approves its differences, or gives it up.</summary>
[RequestFormLimits(ValueCountLimit = 65_536)]
public sealed class CountModel(LedgerContext db, StockQuery query, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<StockCount> Id { get; set; }

    [BindProperty]
    public List<LineForm> Input { get; set; } = [];

    /// <summary>The version that the page was opened on.</summary>
    [BindProperty]
    public int Version { get; set; }

    /// <summary>Why the count is given up.</summary>
    [BindProperty]
    public string? Reason { get; set; }

    public StockCount? Count { get; private set; }

    public string Warehouse { get; private set; } = "";

    public IReadOnlyDictionary<Id<Holding>, Lot> Lots { get; private set; } = new Dictionary<Id<Holding>, Lot>();

    public bool NeedsSecondPerson { get; private set; } = true;

    protected override bool IsThere => Count is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Version = Count?.Version ?? 0;
        Input = [.. (Count?.Lines ?? []).Select(line => new LineForm { Id = line.Id, Bags = line.CountedBags, WeighedKg = line.Counted?.Kilograms, Reason = line.Reason })];
        return Count is null ? NotFound() : Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var count = await db.StockCounts.Whole().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (count is null)
        {
            return NotFound();
        }

        OpenedOn(count, Version);
        foreach (var (line, at) in Input.Select((line, at) => (line, at)).Where(pair => pair.line.Bags is not null || pair.line.WeighedKg is not null))
        {
            Rule.Require(line.Bags is not null, $"Line {at + 1}: how many bags are there?", "");
            Rule.Require(line.WeighedKg is >= 0m and <= 100_000_000m, $"Line {at + 1}: how many kilograms are there? 0 where nothing is.", "");
            var known = count.Lines.FirstOrDefault(one => one.Id == line.Id);
            var weighed = Weight.FromKilograms(line.WeighedKg.Value);
            if (known is null || known.CountedBags != line.Bags || known.Counted != weighed || known.Reason != line.Reason)
            {
                count.Count(line.Id, line.Bags.Value, weighed, line.Reason, User.Person());
            }
        }

        await db.SaveChangesAsync(cancellationToken);
        Say("Saved.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostApproveAsync(CancellationToken cancellationToken)
    {
        var count = await db.StockCounts.Whole().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (count is null)
        {
            return NotFound();
        }

        OpenedOn(count, Version);
        var ids = count.Lines.Select(line => line.HoldingId).ToList();
        var holdings = await db.Holdings.Where(holding => ids.Contains(holding.Id)).ToListAsync(cancellationToken);
        var days = new Dictionary<Id<Holding>, RunningStock>();
        foreach (var id in ids)
        {
            days[id] = await query.DaysAsync(id, cancellationToken);
        }

        var habits = await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        var movements = count.Approve(holdings, days, habits.CountNeedsSecondPerson, User.Person(), clock.GetUtcNow());
        db.AddRange(movements);
        await db.SaveChangesAsync(cancellationToken);
        Say(movements.Count == 0 ? "Approved: the ledger is right." : $"Approved: {Display.Figures.Count(movements.Count, "difference is", "differences are")} in the ledger.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostDropAsync(CancellationToken cancellationToken)
    {
        var count = await db.StockCounts.Whole().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (count is null)
        {
            return NotFound();
        }

        count.Drop(Reason ?? "");
        await db.SaveChangesAsync(cancellationToken);
        Say("Given up. The ledger stays as it is.");
        return RedirectToPage("Counts");
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Count = await db.StockCounts.AsNoTracking().Whole().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (Count is { } count)
        {
            var ids = count.Lines.Select(line => line.HoldingId).ToList();
            Lots = await db.Holdings.Where(holding => ids.Contains(holding.Id)).Join(db.Lots, holding => holding.LotId, lot => lot.Id, (holding, lot) => new { holding.Id, lot }).ToDictionaryAsync(one => one.Id, one => one.lot, cancellationToken);
            Warehouse = await db.Warehouses.Where(one => one.Id == count.WarehouseId).Select(one => one.Name).SingleAsync(cancellationToken);
            NeedsSecondPerson = (await db.StockHabits.AsNoTracking().OfHouseAsync(cancellationToken)).CountNeedsSecondPerson;
        }
    }

    public sealed class LineForm
    {
        public Id<CountLine> Id { get; set; }

        public int? Bags { get; set; }

        public decimal? WeighedKg { get; set; }

        public string? Reason { get; set; }
    }
}
