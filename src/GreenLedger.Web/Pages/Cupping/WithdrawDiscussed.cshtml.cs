using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>Takes back a discussed score with a reason; it stays on the result, struck out.</summary>
[InArea("Cupping, leading")]
public sealed class WithdrawDiscussedModel(LedgerContext db, ResultQuery query, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public Id<DiscussedScore> Discussed { get; set; }

    [BindProperty]
    public WithdrawForm Input { get; set; } = new();

    public DiscussedRow Row { get; private set; } = null!;

    public string Code { get; private set; } = "";

    protected override bool IsThere => Row is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken) =>
        await FindAsync(cancellationToken) ? Page() : NotFound();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.CuppingSessions.Closed().Whole().SingleOrDefaultAsync(session => session.Id == Id, cancellationToken) is not { Result: { } result } || !await FindAsync(cancellationToken))
        {
            return NotFound();
        }

        result.WithdrawDiscussed(Discussed, Input.WithdrawnBecause, User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say("The discussed score is withdrawn; it stays on the result, struck out.");
        return RedirectToPage("Result", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => await FindAsync(cancellationToken);

    private async Task<bool> FindAsync(CancellationToken cancellationToken)
    {
        var found = await query.FindAsync(Id, cancellationToken);
        if (found?.Discussed.FirstOrDefault(row => row.Score.Id == Discussed) is not { } row)
        {
            return false;
        }

        (Row, Code) = (row, found.Key.First(one => one.SampleId == row.Score.SampleId).Code);
        return true;
    }
}
