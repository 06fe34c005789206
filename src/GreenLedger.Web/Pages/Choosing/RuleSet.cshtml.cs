using GreenLedger.Data;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Choosing;

public sealed class RuleSetModel(LedgerContext db) : PageModel
{
    private Dictionary<Id<CuppingForm>, string> _forms = [];
    private Dictionary<Id<Person>, string> _people = [];

    [BindProperty(SupportsGet = true)]
    public Id<BuyingRules> Id { get; set; }

    public BuyingRules Rules { get; private set; } = null!;

    /// <summary>Every edit with what it changed, the newest first.</summary>
    public IReadOnlyList<(RulesRevision Revision, IReadOnlyList<RuleChange> Changes)> Edits { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } rules)
        {
            return NotFound();
        }

        Rules = rules;
        _forms = (await db.CuppingForms.AsNoTracking().ToListAsync(cancellationToken)).ToDictionary(form => form.Id, form => form.ToString());
        _people = await db.People.Select(person => new { person.Id, person.Name }).ToDictionaryAsync(person => person.Id, person => person.Name, cancellationToken);
        var revisions = rules.Revisions.OrderBy(revision => revision.Number).ToList();
        Edits = [.. revisions.Select((revision, i) => (revision, Changes(i == 0 ? null : revisions[i - 1].Terms, revision.Terms))).Reverse()];
        return Page();
    }

    public Task<IActionResult> OnPostPutAwayAsync(CancellationToken cancellationToken) =>
        ChangeAsync(rules => rules.PutAway(), "are put away: nothing is ranked by them.", cancellationToken);

    public Task<IActionResult> OnPostTakeUpAsync(CancellationToken cancellationToken) =>
        ChangeAsync(rules => rules.TakeUpAgain(), "are in use again.", cancellationToken);

    public RuleWords WordsOf(RuleTerms terms) => new(terms, _forms.GetValueOrDefault(terms.FormId));

    public string NameOf(Id<Person>? person) => person is { } id ? _people.GetValueOrDefault(id, "unknown") : "the ledger itself";

    private IReadOnlyList<RuleChange> Changes(RuleTerms? before, RuleTerms after) =>
        before is null ? [] : RuleWords.Changes(WordsOf(before), WordsOf(after));

    private Task<BuyingRules?> FindAsync(CancellationToken cancellationToken) =>
        db.BuyingRules.Whole().FirstOrDefaultAsync(set => set.Id == Id, cancellationToken);

    private async Task<IActionResult> ChangeAsync(Action<BuyingRules> act, string said, CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } rules)
        {
            return NotFound();
        }

        act(rules);
        await db.SaveChangesAsync(cancellationToken);
        TempData["Said"] = $"The rules “{rules.Name}” {said}";
        return RedirectToPage(new { Id });
    }
}
