using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>A purpose: what it has, uses and needs, and the lots that serve it.</summary>
public sealed class PurposeModel(LedgerContext db, PurposeQuery query, PurposeActs acts, HouseZone house) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Purpose> Id { get; set; }

    [BindProperty]
    public string? LotRef { get; set; }

    public Purpose? Purpose { get; private set; }

    /// <summary>Null for one that is put away.</summary>
    public PurposeCover? Cover { get; private set; }

    public IReadOnlyList<Lot> Lots { get; private set; } = [];

    /// <summary>References of lots in stock that do not serve it.</summary>
    public IReadOnlyList<string> Held { get; private set; } = [];

    protected override bool IsThere => Purpose is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return IsThere ? Page() : NotFound();
    }

    public Task<IActionResult> OnPostServeAsync(CancellationToken cancellationToken) => ChangeAsync(
        async purpose => $"{(await acts.ServeAsync(purpose, LotRef, cancellationToken)).Ref} serves {purpose.Name} from now on.", cancellationToken);

    public Task<IActionResult> OnPostSpareAsync(Id<Lot> lot, CancellationToken cancellationToken) => ChangeAsync(
        purpose =>
        {
            purpose.Spare(lot);
            return Task.FromResult($"It serves {purpose.Name} no more.");
        },
        cancellationToken);

    public Task<IActionResult> OnPostKeepAsync(CancellationToken cancellationToken) => ChangeAsync(
        purpose =>
        {
            if (purpose.IsInUse)
            {
                purpose.PutAway();
            }
            else
            {
                purpose.TakeUpAgain();
            }

            return Task.FromResult(purpose.IsInUse ? $"{purpose.Name} is in use again." : $"{purpose.Name} is put away.");
        },
        cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Purpose = await db.Purposes.AsNoTracking().Whole().SingleOrDefaultAsync(purpose => purpose.Id == Id, cancellationToken);
        if (Purpose is not { } known)
        {
            return;
        }

        Cover = (await query.ListAsync(house.Today, cancellationToken)).FirstOrDefault(row => row.Purpose.Id == Id)?.Cover;
        var ids = known.Lots.Select(lot => lot.LotId).ToList();
        Lots = await db.Lots.AsNoTracking().Where(lot => ids.Contains(lot.Id)).OrderBy(lot => lot.Ref).ToListAsync(cancellationToken);
        Held = await db.Lots.Where(lot => !ids.Contains(lot.Id) && db.Holdings.Any(holding => holding.LotId == lot.Id && holding.Weighed.Micrograms > 0)).OrderBy(lot => lot.Ref).Select(lot => lot.Ref).ToListAsync(cancellationToken);
    }

    private async Task<IActionResult> ChangeAsync(Func<Purpose, Task<string>> change, CancellationToken cancellationToken)
    {
        var purpose = await db.Purposes.Whole().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (purpose is null)
        {
            return NotFound();
        }

        var said = await change(purpose);
        await db.SaveChangesAsync(cancellationToken);
        Say(said);
        return RedirectToPage(new { Id });
    }
}
