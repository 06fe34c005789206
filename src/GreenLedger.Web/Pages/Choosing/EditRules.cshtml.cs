using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class EditRulesModel(LedgerContext db, CandidateQuery candidates, HouseZone house, RulesActs acts) : FormPage
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
        if (await acts.WriteAsync(Id, Input, User.Person(), cancellationToken) is not { } rules)
        {
            return NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"The rules “{rules.Name}” are saved.");
        return RedirectToPage("/Choosing/Index", new { Rules = rules.Name });
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
