using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>Closes a session: for whoever leads, and for whoever cups alone the own one.</summary>
public sealed class CloseModel(LedgerContext db, BlindTableQuery query, LiveTableQuery live, CupperRecordQuery records, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    /// <summary>Whoever closes has read which sheets are missing.</summary>
    [BindProperty]
    public bool WithMissing { get; set; }

    /// <summary>Cuppers who repeat worse than this count less, in points; null for all alike.</summary>
    [BindProperty]
    public decimal? StatedRepeatability { get; set; }

    public BlindTable Found { get; private set; } = null!;

    /// <summary>Cuppers who have not handed in everything.</summary>
    public IReadOnlyList<LiveCupper> Late { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, User.Person(), cancellationToken) is not { } found)
        {
            return NotFound();
        }

        if (!User.MayWrite("Cupping, leading") && !found.IsAlone)
        {
            return Forbid();
        }

        await LoadAsync(cancellationToken);
        StatedRepeatability = await db.CuppingHabits.Select(habits => habits.StatedRepeatability).SingleAsync(cancellationToken) is { } stated ? stated.Points : null;
        return found.IsClosed ? RedirectToPage("Result", new { Id }) : Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await using var turn = await db.TakeTurnAsync(Id, cancellationToken);
        if (await db.CuppingSessions.Whole().SingleOrDefaultAsync(session => session.Id == Id, cancellationToken) is not { } session)
        {
            return NotFound();
        }

        if (!User.MayWrite("Cupping, leading") && !session.IsAloneOf(User.Person()))
        {
            return Forbid();
        }

        var weights = StatedRepeatability is { } stated ? await records.WeightsAsync(session, new CupperWeights((double)stated), cancellationToken) : null;
        session.Close(by: User.Person(), at: clock.GetUtcNow(), await Errors.ExpectedAsync(db, cancellationToken), WithMissing, weights);
        await db.SaveChangesAsync(cancellationToken);
        await turn.CommitAsync(cancellationToken);
        return RedirectToPage("Result", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Found = (await query.FindAsync(Id, null, cancellationToken))!;
        var table = (await live.FindAsync(Id, cancellationToken))!;
        Late = table.HasPanel ? [.. table.Cuppers.Where(cupper => cupper.Begun.Count + cupper.NotBegun.Count > 0)] : [];
    }
}
