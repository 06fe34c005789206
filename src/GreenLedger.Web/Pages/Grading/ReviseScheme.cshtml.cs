using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>Makes a new revision of a defect table.</summary>
[InArea("Cupping, leading")]
public sealed class ReviseSchemeModel(LedgerContext db) : FormPage
{
    private const int EmptyLines = 3;

    [BindProperty(SupportsGet = true)]
    public Id<SchemeRevision> Id { get; set; }

    [BindProperty]
    public SchemeForm Input { get; set; } = new();

    public SchemeRevision Found { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.SchemeRevisions.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        Input = SchemeForm.Of(found.Scheme);
        AddLines();
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await db.SchemeRevisions.SingleOrDefaultAsync(one => one.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        await db.RequireNewestAsync(found, cancellationToken);
        var revised = found.Revise(Input.SampleGrams ?? 0m, Input.DefectKinds(), Input.QualityClasses(), Input.Reason);
        db.Add(revised);
        await db.SaveChangesAsync(cancellationToken);
        Say($"Samples are counted by revision {revised.Revision} from now on.");
        return RedirectToPage("Scheme", new { revised.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Found = await db.SchemeRevisions.AsNoTracking().SingleAsync(one => one.Id == Id, cancellationToken);
        AddLines();
    }

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.SchemeRevisions.AnyAsync(one => one.Id == Id, cancellationToken);

    private void AddLines()
    {
        Input.Kinds.AddRange(Enumerable.Repeat(0, Math.Max(0, EmptyLines - Input.Kinds.Count(kind => kind.IsEmpty))).Select(_ => new KindForm()));
        Input.Classes.AddRange(Enumerable.Repeat(0, Math.Max(0, 1 - Input.Classes.Count(one => one.IsEmpty))).Select(_ => new ClassForm()));
    }

    public sealed class SchemeForm
    {
        [Display(Name = "Counted in (g)")]
        public decimal? SampleGrams { get; set; }

        public List<KindForm> Kinds { get; set; } = [];

        public List<ClassForm> Classes { get; set; } = [];

        [Display(Name = "Reason for the change")]
        public string? Reason { get; set; }

        internal static SchemeForm Of(DefectScheme scheme) => new()
        {
            SampleGrams = scheme.SampleGrams,
            Kinds = [.. scheme.Kinds.Select(kind => new KindForm { Code = kind.Code, Name = kind.Name, Category = kind.Category, BeansPerFullDefect = kind.BeansPerFullDefect })],
            Classes = [.. scheme.Classes.Select(one => new ClassForm { Name = one.Name, Category1 = one.Category1, Category2 = one.Category2, Total = one.Total, QuakersIn100Grams = one.QuakersIn100Grams })],
        };

        internal IReadOnlyList<DefectKind> DefectKinds() =>
            [.. Kinds.Where(kind => !kind.IsEmpty).Select(kind => new DefectKind(kind.Code ?? "", kind.Name!.Trim(), kind.Category, kind.BeansPerFullDefect ?? 0m))];

        internal IReadOnlyList<QualityClass> QualityClasses() =>
            [.. Classes.Where(one => !one.IsEmpty).Select(one => new QualityClass(one.Name!.Trim(), one.Category1, one.Category2, one.Total, one.QuakersIn100Grams))];
    }

    public sealed class KindForm
    {
        public string? Code { get; set; }

        public string? Name { get; set; }

        public int Category { get; set; } = 2;

        public decimal? BeansPerFullDefect { get; set; }

        internal bool IsEmpty => string.IsNullOrWhiteSpace(Name);
    }

    public sealed class ClassForm
    {
        public string? Name { get; set; }

        public decimal? Category1 { get; set; }

        public decimal? Category2 { get; set; }

        public decimal? Total { get; set; }

        public decimal? QuakersIn100Grams { get; set; }

        internal bool IsEmpty => string.IsNullOrWhiteSpace(Name);
    }
}
