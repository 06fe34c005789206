using GreenLedger.Data.Arrivals;
using GreenLedger.Documents.Arrivals;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>One claim: what it rests on, what it asks for, what was said about it and how it ended.</summary>
public sealed class ClaimModel(ClaimQuery query, HouseZone house, TimeProvider clock) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Claim> Id { get; set; }

    public Claim Claim { get; private set; } = null!;

    public IReadOnlyDictionary<Id<Person>, string> Names { get; private set; } = new Dictionary<Id<Person>, string>();

    /// <summary>What stands of it in the cost of its lot; null where nothing does.</summary>
    public CostPosting? Posting { get; private set; }

    /// <summary>The receipt was corrected after the claim was opened, which keeps its figures.</summary>
    public bool IsReceiptCorrected { get; private set; }

    public bool MayWrite => User.MayWrite("Arrivals");

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } claim)
        {
            return NotFound();
        }

        Claim = claim;
        IsReceiptCorrected = claim.Case.Receipt is { } receipt && await query.CorrectionsAsync(claim, cancellationToken) > receipt.Corrections;
        Posting = await query.PostingAsync(claim, cancellationToken);
        Names = await query.NamesAsync(claim, cancellationToken);
        return Page();
    }

    /// <summary>The claim as a letter to the seller.</summary>
    public async Task<IActionResult> OnGetLetterAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } claim)
        {
            return NotFound();
        }

        var file = new MemoryStream();
        ClaimLetter.Write(claim, User.PersonName(), clock.GetUtcNow(), file, house.Zone);
        file.Position = 0;
        return File(file, ClaimLetter.MediaType, $"{claim.Ref}.pdf");
    }
}
