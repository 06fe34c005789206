using GreenLedger.Data;
using GreenLedger.Data.Arrivals;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>Opens a claim from an arrival's verdicts.</summary>
public sealed class OpenClaimModel(LedgerContext db, ArrivalCaseQuery cases, HouseZone house, TimeProvider clock) : FormPage
{
    /// <summary>The arrival.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Arrival> Id { get; set; }

    [BindProperty]
    public ClaimForm Input { get; set; } = new();

    public ClaimBasis Basis { get; private set; } = null!;

    /// <summary>Every deadline that the contract names.</summary>
    public IReadOnlyList<ClaimDeadline> Deadlines { get; private set; } = [];

    public DateOnly Today => house.Today;

    /// <summary>What the typed amount comes to; empty until it was asked for.</summary>
    public IReadOnlyList<ClaimLine> Lines { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input.On = Today;
        Input.Grounds = [.. Basis.Findings.Where(finding => finding.IsShown).Select(finding => finding.Ground)];
        return Page();
    }

    /// <summary>Shows what the amount comes to and stores nothing.</summary>
    public async Task<IActionResult> OnPostCountAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Lines = ClaimLine.Of(Basis, Input.Order(Basis.Currency));
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await using var turn = await db.NumberAsync(cancellationToken);
        await LoadAsync(cancellationToken);
        var others = await db.Claims.AsNoTracking().Where(claim => claim.ArrivalId == Id).ToListAsync(cancellationToken);
        var claim = Claim.Open(await db.Claims.NextRefAsync(Today, cancellationToken), Basis, Input.Order(Basis.Currency), others, User.Person(), clock.GetUtcNow());
        db.Add(claim);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        Say($"Claim {claim.Ref} is open. Its letter is ready to be printed.");
        return RedirectToPage("Claim", new { claim.Id });
    }

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.Arrivals.AnyAsync(arrival => arrival.Id == Id, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Basis = (await cases.FindAsync(Id, cancellationToken))!.Basis();
        Deadlines = ClaimTimes.Deadlines(Basis.Contract.Terms.Form, Basis.Shipment);
    }
}
