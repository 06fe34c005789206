using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Grading;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Web.Contracts;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>Writes the version that is not signed, or an amendment where every version is.</summary>
public sealed class TermsModel(LedgerContext db, DraftBasisQuery query, HouseZone house, TimeProvider clock) : ContractPage(db, house, clock), ITermsPage
{
    [BindProperty]
    public TermsForm Input { get; set; } = new();

    public IReadOnlyList<ContractedLot> Known => Shown?.Newest.Terms.Lots ?? [];

    public IReadOnlyList<StandardForm> Forms { get; private set; } = [];

    public GradingStandards Standards { get; private set; } = GradingStandards.Published;

    public bool IsNew => false;

    public bool IsAmendment => Shown?.IsSigned == true;

    public string Button => IsAmendment ? "Save the amendment" : "Save the draft";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = TermsForm.Of(Shown!.Newest.Terms);
        (Input.Version, Input.Reason) = (Shown.Version, Shown.Newest.IsSigned ? null : Shown.Newest.Reason);
        return Page();
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => ActAsync(Input.Version, contract =>
    {
        var terms = Input.Terms(contract.Newest.Terms.Buyer, contract.Newest.Terms.Seller, Known, Standards, Today);
        if (contract.Newest.IsSigned)
        {
            contract.Amend(terms, Input.Reason ?? "", User.Person(), Now);
            return $"The amendment of {contract.Ref} is written. It holds once it is signed.";
        }

        contract.Redraft(terms, Input.Reason, User.Person(), Now);
        return $"Version {contract.Newest.Number} of {contract.Ref} is saved.";
    }, cancellationToken);

    public Task<IActionResult> OnPostDropAsync(CancellationToken cancellationToken) => ActAsync(null, contract =>
    {
        contract.DropAmendment();
        return $"The amendment is dropped: {contract.Ref} stands as it was signed.";
    }, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        await base.LoadAsync(cancellationToken);
        Forms = await query.FormsAsync(cancellationToken);
        Standards = await Db.GradingStandardsAsync(cancellationToken);
    }
}
