using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class EditRulesModel(LedgerContext db, CandidateQuery candidates, HouseZone house, TimeProvider clock) : FormPage
{
    private IReadOnlyList<ProcessMethod> _methods = [];

    [BindProperty]
    public RulesForm Input { get; set; } = new();

    /// <summary>Null to write new rules.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<BuyingRules>? Id { get; set; }

    public IReadOnlyList<CuppingForm> Forms { get; private set; } = [];

    public Currency Currency { get; private set; }

    /// <summary>What the open offers cost today, for anchors that fit; null while none has a landed cost.</summary>
    public (decimal Least, decimal Highest)? Costs { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Id is null)
        {
            Propose();
            return Page();
        }

        if (await FindAsync(cancellationToken) is not { } rules)
        {
            return NotFound();
        }

        Input = RulesForm.Of(rules, _methods);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var name = Input.Name.Trim();
        var taken = await db.BuyingRules.AnyAsync(set => set.Name == name && set.Id != (Id ?? default), cancellationToken);
        Rule.Require(!taken, "There are rules of this name already: choose another.", nameof(BuyingRules.Name));
        var (terms, by, at) = (Input.Terms(Currency, _methods), User.Person(), clock.GetUtcNow());
        if (Id is null)
        {
            db.Add(new BuyingRules(name, terms, by, at));
        }
        else if (await FindAsync(cancellationToken) is { } rules)
        {
            OpenedOn(rules, Input.Version);
            rules.Edit(name, terms, by, at);
        }
        else
        {
            return NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"The rules “{name}” are saved.");
        return RedirectToPage("/Choosing/Index", new { Rules = name });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Forms = await db.CuppingForms.AsNoTracking().OrderBy(form => form.Name).ToListAsync(cancellationToken);
        Currency = (await db.Houses.AsNoTracking().SingleAsync(cancellationToken)).Currency;
        _methods = await db.ProcessMethods.AsNoTracking().OrderBy(method => method.Name).ToListAsync(cancellationToken);
        Costs = await candidates.CostRangeAsync(house.Today, cancellationToken);
    }

    private Task<BuyingRules?> FindAsync(CancellationToken cancellationToken) =>
        db.BuyingRules.Whole().FirstOrDefaultAsync(set => set.Id == Id, cancellationToken);

    /// <summary>Anchors of new rules: whole amounts around today's landed costs, divided by 80 and 90 points for cost per point.</summary>
    private void Propose()
    {
        var (least, highest) = Costs ?? (4m, 14m);
        Input.LowCost = Math.Floor(least);
        Input.HighCost = Math.Ceiling(highest) + (Math.Ceiling(highest) == Input.LowCost ? 1 : 0);
        Input.LowCostPerPoint = Math.Round(Input.LowCost / Input.HighScore, 2);
        Input.HighCostPerPoint = Math.Round(Input.HighCost / Input.LowScore, 2);
        Input.Processes = RulesForm.ProcessForm.AllOf(_methods, null);
    }
}
