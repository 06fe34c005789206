using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Grading;
using GreenLedger.Domain.Grading;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;

namespace GreenLedger.Web.Pages.Grading;

/// <summary>Adds a defect table of the house, from one that is there or from nothing.</summary>
[InArea("Cupping, leading")]
public sealed class NewSchemeModel(LedgerContext db) : FormPage, ISchemePage
{
    /// <summary>The key of the table whose lines are shown to begin with.</summary>
    [BindProperty(SupportsGet = true)]
    public string? From { get; set; }

    [BindProperty]
    public NewSchemeForm Input { get; set; } = new();

    SchemeForm ISchemePage.Input => Input;

    /// <summary>The newest revision of each table, to begin with.</summary>
    public IReadOnlyList<SelectListItem> Tables { get; private set; } = [];

    public static IReadOnlyList<SelectListItem> Species => [new("any", ""), new("arabica", "false"), new("robusta", "true")];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var standards = await db.GradingStandardsAsync(cancellationToken);
        if (standards.Find(From) is { } from)
        {
            Input.Fill(from);
            Input.IsRobusta = from.IsRobusta;
        }
        else
        {
            Input.SampleGrams = GreenGrade.UsualSample.Grams;
        }

        await LoadAsync(cancellationToken);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var standards = await db.GradingStandardsAsync(cancellationToken);
        var head = new SchemeHead(Input.Name, Input.Edition, Input.Source, Input.IsRobusta);
        var added = SchemeRevision.Add(
            DefectScheme.Add(head, standards.Find(From), Input.SampleGrams ?? 0m, Input.DefectKinds(), Input.QualityClasses(), standards.All), Input.Reason);
        db.Add(added);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{added.Scheme.Name} can be chosen for the next grade.");
        return RedirectToPage("Scheme", new { added.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Tables = [new("nothing", ""), .. (await db.GradingStandardsAsync(cancellationToken)).Newest.Select(scheme => new SelectListItem(scheme.Title, scheme.Key, scheme.Key == From))];
        Input.AddLines();
    }

    public sealed class NewSchemeForm : SchemeForm
    {
        public string? Name { get; set; }

        public string? Edition { get; set; }

        public string? Source { get; set; }

        [Display(Name = "For")]
        public bool? IsRobusta { get; set; }
    }
}
