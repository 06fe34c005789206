using GreenLedger.Data;
using GreenLedger.Data.Trace;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Trace;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>Lots that are contracted, afloat or in stock, with what their due diligence holds and lacks.</summary>
public sealed class DiligencesModel(BoughtDiligenceQuery query, LedgerContext db) : PageModel
{
    private static readonly TableColumn<BoughtDiligence>[] Columns =
    [
        TableColumn<BoughtDiligence>.Text("Lot", row => row.View.Lot.Ref),
        TableColumn<BoughtDiligence>.Text("Name", row => row.View.Lot.Name, 32),
        TableColumn<BoughtDiligence>.Text("Origin", row => row.View.Lot.CountryCode, 8),
        TableColumn<BoughtDiligence>.Text("Producer", row => row.View.Producer?.Name),
        TableColumn<BoughtDiligence>.Number("Contracted, kg", row => row.Contracted.Kilograms),
        TableColumn<BoughtDiligence>.Number("Afloat, kg", row => row.Afloat.Kilograms),
        TableColumn<BoughtDiligence>.Number("In stock, kg", row => row.InStock.Kilograms),
        TableColumn<BoughtDiligence>.Day("Expected", row => row.Expected),
        TableColumn<BoughtDiligence>.Text("Role", row => RoleWord(row)),
        TableColumn<BoughtDiligence>.Count("Plots", row => row.View.Grown.Count),
        TableColumn<BoughtDiligence>.Text("Reference number", row => row.View.Held.StatementReference),
        TableColumn<BoughtDiligence>.Count("Points missing", row => row.Missing.Count),
        TableColumn<BoughtDiligence>.Text("Missing", row => string.Join("; ", row.Missing), 60),
        TableColumn<BoughtDiligence>.Text("To look at", row => string.Join(" ", row.Open.ToLookAt), 60),
        TableColumn<BoughtDiligence>.Day("Files kept until", row => row.View.KeptUntil),
    ];

    [BindProperty(SupportsGet = true, Name = "search")]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true, Name = "origin")]
    public string? Origin { get; set; }

    [BindProperty(SupportsGet = true, Name = "stage")]
    public BoughtStage? Stage { get; set; }

    /// <summary>Only lots of which something is missing, or nothing.</summary>
    [BindProperty(SupportsGet = true, Name = "lacking")]
    public bool? Lacking { get; set; }

    [BindProperty(SupportsGet = true, Name = "sort")]
    public string? Sort { get; set; }

    [BindProperty(SupportsGet = true, Name = "pageNumber")]
    public int PageNumber { get; set; } = 1;

    public IReadOnlyList<BoughtDiligence> Rows { get; private set; } = [];

    public IReadOnlyDictionary<string, string> Countries { get; private set; } = new Dictionary<string, string>();

    public IReadOnlyList<SelectListItem> Origins { get; private set; } = [];

    public DiligenceHabits Habits { get; private set; } = new();

    /// <summary>Of all such lots, without the filters.</summary>
    public int All { get; private set; }

    /// <summary>How many of them lack something.</summary>
    public int Open { get; private set; }

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var all = await query.ListAsync(cancellationToken);
        Habits = await db.DiligenceHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        Countries = await db.Countries.ToDictionaryAsync(country => country.Code, country => country.Name, cancellationToken);
        Origins = [.. all.Select(row => row.View.Lot.CountryCode).OfType<string>().Distinct().Select(code => new SelectListItem(Countries.GetValueOrDefault(code, code), code)).OrderBy(item => item.Text, StringComparer.Ordinal)];
        (All, Open) = (all.Count, all.Count(row => row.Missing.Count > 0));
        var fitting = Fitting(all);
        Paging = Paging.Of(PageNumber, fitting.Count, "lot", "lots");
        Rows = [.. fitting.Skip(Paging.Skip).Take(Paging.Size)];
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken) =>
        await this.WorkbookAsync("Due diligence", Columns, Fitting(await query.ListAsync(cancellationToken)), cancellationToken);

    public static string RoleWord(BoughtDiligence row) => row.View.Held.Role == DiligenceRole.Downstream ? "downstream" : "operator";

    /// <summary>What shows one thing, in a word or two.</summary>
    public static string Evidence(BoughtDiligence row, EvidenceKind kind, string? text) =>
        (text is not null, row.View.FilesOf(kind).Count()) switch
        {
            (false, 0) => kind == EvidenceKind.Risk && row.View.IsLowRisk ? "low risk" : "–",
            (true, 0) => "text",
            (false, var files) => Figures.Count(files, "file", "files"),
            (true, var files) => "text, " + Figures.Count(files, "file", "files"),
        };

    private List<BoughtDiligence> Fitting(IReadOnlyList<BoughtDiligence> all)
    {
        var fitting = all.Where(row =>
            (string.IsNullOrWhiteSpace(Search) || $"{row.View.Lot.Ref} {row.View.Lot.Name} {row.View.Producer?.Name}".Contains(Search.Trim(), StringComparison.CurrentCultureIgnoreCase))
            && (string.IsNullOrEmpty(Origin) || row.View.Lot.CountryCode == Origin)
            && (Stage is not { } stage || row.Is(stage))
            && (Lacking is not { } lacking || row.Missing.Count > 0 == lacking));
        var falling = Sort?.StartsWith('-') == true;
        IComparable? Key(BoughtDiligence row) => Sort?.TrimStart('-') switch
        {
            "name" => row.View.Lot.Name,
            "origin" => row.View.Lot.CountryCode ?? "",
            "quantity" => row.Total.Kilograms,
            "expected" => row.Expected ?? DateOnly.MaxValue,
            "missing" => row.Missing.Count,
            _ => row.View.Lot.Ref,
        };
        return [.. falling ? fitting.OrderByDescending(Key) : fitting.OrderBy(Key)];
    }
}
