using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Choosing;

/// <summary>Which offers to buy of for what the purposes need, and in one step the decisions to do so.</summary>
public sealed class PlanModel(LedgerContext db, PlanDesk desk, HouseZone house) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public PlanWish Wish { get; set; } = new();

    [BindProperty]
    public PlanForm Input { get; set; } = new();

    public IReadOnlyList<string> Names { get; private set; } = [];

    public PlanBasis? Basis { get; private set; }

    /// <summary>Null until it is asked for.</summary>
    public PurchasePlan? Plan { get; private set; }

    /// <summary>Why there is no plan, in a sentence; null where there is one or none was asked for.</summary>
    public string? Trouble { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.Reason = $"By the purchase plan of {Display.Figures.Day(house.Today)}.";
    }

    /// <summary>Whether a line is ticked: as it was left, and every one at first.</summary>
    public bool IsTaken(Id<Offer> offer) => Input.Lines.Find(line => line.OfferId == offer)?.IsTaken ?? true;

    /// <summary>Decides on every line that is ticked, all or none.</summary>
    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var lines = Input.Lines.Where(line => line.IsTaken).ToList();
        Rule.Require(lines.Count > 0, "Tick the lots that you want to buy.");
        if (!await desk.DecideAsync(Wish, lines.ConvertAll(line => (line.OfferId, line.Bags)), Input.Reason, User.Person(), cancellationToken))
        {
            return NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"Decided to buy {Display.Figures.Count(lines.Count, "lot", "lots")}.");
        return RedirectToPage("/Choosing/Decisions");
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Names = await db.BuyingRules.Where(rules => rules.IsInUse).OrderBy(rules => rules.Name).Select(rules => rules.Name).ToListAsync(cancellationToken);
        if (ModelState.Keys.Any(key => key.StartsWith(nameof(Wish), StringComparison.Ordinal) && ModelState[key]!.Errors.Count > 0) || !await MakeAsync(cancellationToken))
        {
            await ShowNeedsAsync(cancellationToken);
        }
    }

    /// <summary>What a figure was typed as, whether it could be read or not; else what stands for it.</summary>
    public string? Typed(string field, string? known) => ModelState.TryGetValue($"{nameof(Wish)}.{field}", out var entry) && entry.AttemptedValue is { } typed ? typed : known;

    /// <summary>False where the figures, which stand in the address and may be typed by hand, cannot be: then the sentence stands in place of the plan.</summary>
    private async Task<bool> MakeAsync(CancellationToken cancellationToken)
    {
        try
        {
            Basis ??= await desk.LayOutAsync(Wish, house.Today, cancellationToken);
            Trouble = Basis.Trouble;
            if (Wish.Make && Basis.Request is { } request)
            {
                Plan = PlanSolver.Solve(request, TimeSpan.FromSeconds(Wish.Seconds));
            }

            return true;
        }
        catch (RuleBrokenException broken)
        {
            Trouble = broken.Message;
            return false;
        }
    }

    /// <summary>The months without a plan, so that no budget that was typed is lost.</summary>
    private async Task ShowNeedsAsync(CancellationToken cancellationToken)
    {
        var typed = ModelState.Keys.Count(key => key.StartsWith($"{nameof(Wish)}.{nameof(PlanWish.Budget)}[", StringComparison.Ordinal));
        var months = Wish.Months is >= 1 and <= PlanRequest.MostMonths ? Wish.Months : Math.Clamp(typed, 1, PlanRequest.MostMonths);
        if (Wish.Rules is null || Names.Contains(Wish.Rules))
        {
            Basis = await desk.LayOutAsync(new PlanWish { Rules = Wish.Rules, Months = months }, house.Today, cancellationToken);
        }
    }

    public sealed class PlanForm
    {
        public List<PlanLine> Lines { get; set; } = [];

        public string? Reason { get; set; }
    }

    public sealed class PlanLine
    {
        public bool IsTaken { get; set; }

        public Id<Offer> OfferId { get; set; }

        public int Bags { get; set; }
    }
}
