using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Choosing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class DecideModel(LedgerContext db, ShortlistQuery query, CandidateQuery candidates, HouseZone house, TimeProvider clock) : FormPage
{
    [BindProperty]
    public DecideForm Input { get; set; } = new();

    /// <summary>The offer.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Offer> Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public RankingWish Wish { get; set; } = new();

    public BuyingRules? Chosen { get; private set; }

    public Shortlist? Shortlist { get; private set; }

    public ShortlistEntry? Entry { get; private set; }

    public Advice? Advice { get; private set; }

    public LandedCost? Cost { get; private set; }

    /// <summary>Decisions on this offer so far, the newest first.</summary>
    public IReadOnlyList<Decision> Earlier { get; private set; } = [];

    /// <summary>Why nothing can be decided now, in a sentence; null where it can.</summary>
    public string? Trouble { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Chosen is null || (Entry is null && Trouble is null))
        {
            return NotFound();
        }

        Input.Outcome = Advice?.Outcome ?? Outcome.Hold;
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Entry is null || Chosen is null || Shortlist is null || Advice is null)
        {
            return NotFound();
        }

        var choice = new Choice(Input.Outcome, Input.QuantityKg is { } kilograms ? Weight.FromKilograms(kilograms) : null, Input.Reason, Input.Note);
        var decision = Decision.Take(
            Advice, choice, RulesSnapshot.Of(Chosen, Shortlist.Terms), FiguresSnapshot.Of(Entry, Shortlist), Entry.Candidate, User.Person(), clock.GetUtcNow());
        db.Add(decision);
        await db.SaveChangesAsync(cancellationToken);
        Say($"Decided to {decision.Outcome.Word()} {Entry.Candidate.Ref}.");
        return RedirectToPage("/Choosing/Decision", new { id = decision.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        // Searching would leave other lots out of the ranking that the decision is made on.
        Wish.Search = null;
        (Chosen, Shortlist, Trouble) = await Ranking.OfAsync(Wish, db, query, house.Today, cancellationToken);
        Entry = Shortlist?.Find(Id);
        Advice = Entry is null || Shortlist is null ? null : BuyingRules.Advise(Entry, Shortlist);
        Cost = Entry is null ? null : await candidates.CostAsync(Id, house.Today, cancellationToken);
        Earlier = await db.Decisions.Where(decision => decision.OfferId == Id).NewestFirst().AsNoTracking().ToListAsync(cancellationToken);
    }

    public sealed class DecideForm
    {
        [Display(Name = "Decision")]
        public Outcome Outcome { get; set; }

        [Display(Name = "Quantity to buy, kg")]
        [Range(0, 100_000_000, ErrorMessage = "The quantity is 0 kg or more.")]
        public decimal? QuantityKg { get; set; }

        [Display(Name = "Reason for deciding against the advice")]
        public string? Reason { get; set; }

        public string? Note { get; set; }
    }
}
