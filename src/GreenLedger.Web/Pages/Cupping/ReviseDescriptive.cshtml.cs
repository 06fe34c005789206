using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>Makes a new revision of a descriptive form.</summary>
[InArea("Cupping, leading")]
public sealed class ReviseDescriptiveModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<DescriptiveForm> Id { get; set; }

    [BindProperty]
    public DescriptiveInput Input { get; set; } = new();

    public DescriptiveForm Found { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.DescriptiveForms.AsNoTracking().SingleOrDefaultAsync(form => form.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        Input.Highest = found.Rules.Intensities.ToDictionary(line => line.Key, line => line.Highest);
        Input.MostPicks = found.Rules.Lists.ToDictionary(list => list.Key, list => list.MostPicks);
        Input.Words = found.Rules.Lists.ToDictionary(list => list.Key, list => (string?)CheckWords.Text(list.Words));
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.DescriptiveForms.SingleOrDefaultAsync(form => form.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        await db.RequireNewestAsync(found, cancellationToken);
        var revised = found.Revise(Input.Onto(found.Rules), Input.Reason);
        db.Add(revised);
        await db.SaveChangesAsync(cancellationToken);
        Say($"The next session can use revision {revised.Revision}.");
        return RedirectToPage("Descriptive", new { revised.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Found = await db.DescriptiveForms.AsNoTracking().SingleAsync(form => form.Id == Id, cancellationToken);

    /// <summary>Numbers and words by the keys of the lines and lists.</summary>
    public sealed class DescriptiveInput
    {
        public Dictionary<string, int> Highest { get; set; } = [];

        public Dictionary<string, int> MostPicks { get; set; } = [];

        public Dictionary<string, string?> Words { get; set; } = [];

        public string? Reason { get; set; }

        internal DescriptiveRules Onto(DescriptiveRules rules) => new(
            [.. rules.Intensities.Select(line => line with { Highest = Highest.GetValueOrDefault(line.Key) })],
            [.. rules.Lists.Select(Typed)]);

        private CheckList Typed(CheckList list) => list with
        {
            MostPicks = MostPicks.GetValueOrDefault(list.Key),
            Words = CheckWords.Read(Words.GetValueOrDefault(list.Key), list.Words, nameof(Words)),
        };
    }
}
