using GreenLedger.Data;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>Writes down a score that cuppers agreed on in talk after closing.</summary>
[InArea("Cupping, leading")]
public sealed class DiscussModel(LedgerContext db, ResultQuery query, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<CuppingSession> Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public Id<Sample> Sample { get; set; }

    [BindProperty]
    public DiscussForm Input { get; set; } = new();

    public ClosedSession Found { get; private set; } = null!;

    public SampleResult Result { get; private set; } = null!;

    public TableSampleRow Row { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await query.FindAsync(Id, cancellationToken) is not { } found || found.Session.Result!.Samples.All(result => result.SampleId != Sample))
        {
            return NotFound();
        }

        Describe(found);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.CuppingSessions.Closed().Whole().SingleOrDefaultAsync(session => session.Id == Id, cancellationToken) is not { } session
            || session.Result!.Samples.All(result => result.SampleId != Sample))
        {
            return NotFound();
        }

        Rule.Require(Input.Score is not null, "The discussed score is missing: please fill it in.", nameof(Input.Score));
        session.Result.Discuss(Sample, Input.Score.Value, Input.Reason ?? "", User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say("The discussed score stands beside the panel's. The shortlist keeps ranking by the panel's fitted score.");
        return RedirectToPage("Result", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Describe((await query.FindAsync(Id, cancellationToken))!);

    private void Describe(ClosedSession found)
    {
        Found = found;
        Result = found.Session.Result!.Samples.Single(result => result.SampleId == Sample);
        Row = found.Key.Single(row => row.SampleId == Sample && row.Repeat == 0);
    }

    public sealed class DiscussForm
    {
        public decimal? Score { get; set; }

        public string? Reason { get; set; }
    }
}
