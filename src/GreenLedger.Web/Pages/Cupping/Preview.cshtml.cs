using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping.Reading;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Cupping;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Cupping;

/// <summary>What a file of past results would give; its columns can be corrected before it is taken in.</summary>
[InArea("Cupping, leading")]
public sealed class PreviewModel(LedgerContext db, PastResults past, HouseZone house) : FormPage
{
    public const int MostShown = 200;

    public static IReadOnlyList<string> Meanings { get; } = [.. ResultWords.Meanings];

    [BindProperty(SupportsGet = true)]
    public Id<StoredFile> Id { get; set; }

    [BindProperty]
    public PreviewForm Input { get; set; } = new();

    public IReadOnlyList<SelectListItem> Forms { get; private set; } = [];

    public IReadOnlyList<PreviewColumn> Columns { get; private set; } = [];

    public int NewLots { get; private set; }

    public PastPreview? Found { get; private set; }

    /// <summary>A meaning in words: <c>clean-cup</c> is "clean cup".</summary>
    public static string Word(string meaning) => meaning switch
    {
        ResultWords.Name => "sample, lot or reference",
        ResultWords.Total => "stated total",
        ResultWords.Defects => "points deducted",
        ResultWords.Category1 => "category 1 full defects",
        ResultWords.Category2 => "category 2 full defects",
        _ => meaning.Replace('-', ' '),
    };

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        // Files of others stay theirs: among them are offer lists, whose prices are not for everybody who leads a cupping.
        var by = User.Person();
        if (!await db.StoredFiles.AnyAsync(file => file.Id == Id && file.By == by, cancellationToken))
        {
            return NotFound();
        }

        Input.HeldOn = house.Today;
        await LoadAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnPostAgainAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        ModelState.Remove("Input.Form");
        return Page();
    }

    public async Task<IActionResult> OnPostStoreAsync(CancellationToken cancellationToken)
    {
        if (await past.ReadParkedAsync(Id, User.Person(), Input.Form, Input.Corrections(), cancellationToken) is not { } preview)
        {
            return NotFound();
        }

        var taking = await past.StoreAsync(preview, Input.HeldOn, User.Person(), cancellationToken);
        Rule.Require(taking is not null, "This very file was taken in before: nothing was stored a second time.", "");
        Say($"{Figures.Count(preview.List.Accepted.Count, "row is", "rows are")} taken in, {Figures.Count(preview.List.SetAside.Count)} set aside, {Figures.Count(preview.List.Disagreements.Count(), "total disagrees", "totals disagree")}.");
        return RedirectToPage("Result", new { id = taking.Sessions[^1].Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var forms = await db.CuppingForms.AsNoTracking().OrderBy(form => form.Code).ThenByDescending(form => form.Revision).ToListAsync(cancellationToken);
        Forms = [.. forms.Select(form => new SelectListItem(form.ToString(), form.Id.ToString()))];
        try
        {
            Columns = await ColumnsAsync(cancellationToken);
            Found = await past.ReadParkedAsync(Id, User.Person(), Input.Form, Input.Corrections(), cancellationToken);
            Input.Form = Found?.List.Form.Id.ToString();
            NewLots = Found?.List.Accepted.Select(row => row.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count(name => !Found.Known.ContainsKey(name)) ?? 0;
        }
        catch (RuleBrokenException broken)
        {
            // The columns are shown so that the missing one can be named; what is wrong stands above them.
            ModelState.AddModelError("", broken.Message);
        }
    }

    private async Task<IReadOnlyList<PreviewColumn>> ColumnsAsync(CancellationToken cancellationToken)
    {
        var table = await past.TableAsync(Id, User.Person(), cancellationToken);
        var corrected = Input.Columns.ToDictionary(column => column.Heading ?? "", column => column.Meaning ?? "", StringComparer.Ordinal);
        var first = table?.Rows.FirstOrDefault();
        return [.. (table?.Mapping.Headings ?? [])
            .Select((heading, index) => new PreviewColumn(heading, corrected.GetValueOrDefault(heading) ?? table!.Mapping.Meanings[index], first?[index].Trimmed ?? ""))
            .Where(column => column.Heading.Length > 0)];
    }

    public sealed record PreviewColumn(string Heading, string Meaning, string Example);

    public sealed class PreviewForm
    {
        public string? Form { get; set; }

        [Display(Name = "Held on")]
        public DateOnly? HeldOn { get; set; }

        public List<ColumnForm> Columns { get; set; } = [];

        /// <summary>The columns as chosen; none when the page is opened for the first time.</summary>
        internal Dictionary<string, string> Corrections() => Columns
            .Where(column => !string.IsNullOrEmpty(column.Heading))
            .OrderBy(column => column.Meaning?.Length ?? 0)
            .DistinctBy(column => column.Heading)
            .ToDictionary(column => column.Heading!, column => column.Meaning ?? "");
    }

    public sealed class ColumnForm
    {
        public string? Heading { get; set; }

        public string? Meaning { get; set; }
    }
}
