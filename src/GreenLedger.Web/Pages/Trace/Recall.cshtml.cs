using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Trace;
using GreenLedger.Documents.Trace;
using GreenLedger.Domain;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Trace;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Trace;

/// <summary>A mock recall while it runs, and as it was found once it has ended.</summary>
public sealed class RecallModel(LedgerContext db, RecallQuery query, RecallActs acts) : FormPage
{
    /// <summary>The recall.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<MockRecall> Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    [BindProperty]
    public EndForm Input { get; set; } = new();

    public RecallRow? Row { get; private set; }

    /// <summary>As frozen when it ended, else as of now; null where what was recalled is no longer there.</summary>
    public RecallFindings? Findings { get; private set; }

    public Paging Paging { get; private set; } = null!;

    public IEnumerable<RecallFinding> Lines => Findings!.Lines.Skip(Paging.Skip).Take(Paging.Size);

    protected override bool IsThere => Row is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return IsThere ? Page() : NotFound();
    }

    public async Task<IActionResult> OnGetPdfAsync(CancellationToken cancellationToken)
    {
        return await query.FindAsync(Id, cancellationToken) is { } row && await acts.ReportAsync(row, cancellationToken) is { } report
            ? File(report, RecallPdf.MediaType, $"mock recall {row.Recall.Ref}.pdf")
            : NotFound();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await acts.EndAsync(Id, Input.Learned, User.Person(), cancellationToken) is not { } recall)
        {
            return NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"{recall.Ref} has ended; what was found is kept.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Row = await query.FindAsync(Id, cancellationToken);
        Findings = Row is null ? null : Row.Recall.Findings ?? await acts.FindAsync(Row.Recall, cancellationToken);
        Paging = Paging.Of(PageNumber, Findings?.Lines.Count ?? 0, "line", "lines");
    }

    public sealed class EndForm
    {
        [Display(Name = "What was learned")]
        public string? Learned { get; set; }
    }
}
