using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Web.Contracts;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>Drafts a contract from a decision to buy.</summary>
public sealed class DraftModel(LedgerContext db, DraftBasisQuery query, HouseZone house, TimeProvider clock) : FormPage, ITermsPage
{
    /// <summary>The decision.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Decision> Id { get; set; }

    [BindProperty]
    public TermsForm Input { get; set; } = new();

    public DraftBasis? Basis { get; private set; }

    /// <summary>Why this decision leads to no contract; null where it does.</summary>
    public string? Trouble { get; private set; }

    public IReadOnlyList<ContractedLot> Known => Basis is null ? [] : [DraftTerms.Line(Basis.Bought), .. Basis.Others.Select(DraftTerms.Line)];

    public IReadOnlyList<StandardForm> Forms => Basis?.Forms ?? [];

    public GradingStandards Standards { get; private set; } = GradingStandards.Published;

    public bool IsNew => true;

    public bool IsAmendment => false;

    public string Button => "Draft the contract";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Basis is null)
        {
            return Trouble is null ? NotFound() : Page();
        }

        var terms = DraftTerms.Of(Basis.House, Basis.Supplier, [Basis.Bought], Basis.Forms.Count > 0 ? Basis.Forms[0] : null, house.Today);
        Input = TermsForm.Of(terms);
        foreach (var other in Basis.Others)
        {
            Input.Lots.Add(TermsForm.LotForm.Of(DraftTerms.Line(other), isTaken: false));
        }

        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await using var turn = await db.NumberAsync(cancellationToken);
        await LoadAsync(cancellationToken);
        if (Basis is null)
        {
            return Trouble is null ? NotFound() : Page();
        }

        var terms = Input.Terms(Basis.House, Basis.Supplier.Name, Known, Standards, house.Today);
        var decisions = Basis.Others.Prepend(Basis.Bought).ToDictionary(one => one.Lot.Id, one => one.Decision.Id);
        var contract = Contract.Draft(Input.Ref ?? await db.Contracts.NextRefAsync(house.Today, cancellationToken), Basis.Supplier.Id, terms, decisions, User.Person(), clock.GetUtcNow());
        await db.Contracts.RequireFreeRefAsync(contract.Ref, cancellationToken);
        db.Add(contract);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        Say($"Contract {contract.Ref} is drafted. It binds nobody before it is signed.");
        return RedirectToPage("Contract", new { contract.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        (Basis, Trouble) = await query.FindAsync(Id, cancellationToken);
        Standards = await db.GradingStandardsAsync(cancellationToken);
    }
}
