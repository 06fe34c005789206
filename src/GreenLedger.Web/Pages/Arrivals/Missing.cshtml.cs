using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Opens a claim on goods of a contract that did not come: never shipped, or lost on the way.</summary>
public sealed class MissingModel(LedgerContext db, MissingGoodsQuery query, HouseZone house, TimeProvider clock) : FormPage
{
    /// <summary>The contract.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Contract> Id { get; set; }

    /// <summary>What the page is opened for; the first that is missing where nothing is said.</summary>
    [BindProperty(SupportsGet = true)]
    public Guid? Part { get; set; }

    [BindProperty]
    public MissingForm Input { get; set; } = new();

    public IReadOnlyList<MissingGoods> All { get; private set; } = [];

    public Contract Contract => All[0].Contract;

    public DateOnly Today => house.Today;

    /// <summary>What the typed amount comes to; empty until it was asked for.</summary>
    public IReadOnlyList<ClaimLine> Lines { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = new MissingForm { On = Today, Part = Part ?? All.FirstOrDefault(goods => goods.Finding(Today).IsShown && goods.IsOverdue(Today))?.Key };
        return Page();
    }

    /// <summary>Shows what the amount comes to and stores nothing.</summary>
    public async Task<IActionResult> OnPostCountAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var goods = MissingGoods.Chosen(All, Input.Part);
        Lines = ClaimLine.Of(goods, Input.Order(goods.Currency));
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await using var turn = await db.NumberAsync(cancellationToken);
        await LoadAsync(cancellationToken);
        var goods = MissingGoods.Chosen(All, Input.Part);
        var others = await db.Claims.AsNoTracking().Where(claim => claim.ContractId == Id).ToListAsync(cancellationToken);
        var claim = Claim.Open(await db.Claims.NextRefAsync(Today, cancellationToken), goods, Input.Order(goods.Currency), others, User.Person(), clock.GetUtcNow());
        db.Add(claim);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        Say($"Claim {claim.Ref} is open. Its letter is ready to be printed.");
        return RedirectToPage("Claim", new { claim.Id });
    }

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.Contracts.AnyAsync(contract => contract.Id == Id, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken) => All = (await query.ListAsync(Id, cancellationToken))!;
}
