using GreenLedger.Data;
using GreenLedger.Data.Costs;
using GreenLedger.Domain;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Costs;

/// <summary>One invoice as it was posted; withdrawn where it was wrong.</summary>
public sealed class PostingModel(LedgerContext db, PostingQuery query, LotCostQuery costs, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<CostPosting> Id { get; set; }

    [BindProperty]
    public WithdrawForm Input { get; set; } = new();

    public PostingRow? Row { get; private set; }

    /// <summary>The lots that it is spent on, with their parts; none where it is withdrawn.</summary>
    public IReadOnlyList<PostingShare> Shares { get; private set; } = [];

    public Money Together(Func<CostPart, Money> of) => Shares.Aggregate(Money.Zero(Row!.Posting.House.Currency), (sum, share) => sum + of(share.Cost));

    protected override bool IsThere => Row is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Row is null ? NotFound() : Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var posting = await db.CostPostings.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (posting is null)
        {
            return NotFound();
        }

        posting.Withdraw(Input.WithdrawnBecause ?? "", User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say("Withdrawn. It stays on record and counts no more.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Row = await query.FindAsync(Id, cancellationToken);
        Shares = Row is { } row ? await costs.SharesAsync(row.Posting, cancellationToken) : [];
    }
}
