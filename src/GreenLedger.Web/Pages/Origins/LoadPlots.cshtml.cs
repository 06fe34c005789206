using System.Globalization;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Display;
using GreenLedger.Web.Origins;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

/// <summary>A producer's plots from a file: choose it, look at each plot, keep those that shall stay.</summary>
[RequestSizeLimit(32 * 1024 * 1024)]
public sealed class LoadPlotsModel(LedgerContext db, PlotLoading loading, WorldMap world) : FormPage
{
    /// <summary>More rows than anybody looks through; each is a choice that the form sends back.</summary>
    public const int MostShown = 400;

    /// <summary>The producer.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Producer> Id { get; set; }

    /// <summary>The file that was sent; null before.</summary>
    [BindProperty(SupportsGet = true, Name = "file")]
    public Id<StoredFile>? SentFile { get; set; }

    [BindProperty]
    public LoadForm Input { get; set; } = new();

    public Producer? Producer { get; private set; }

    public PlotPreview? Found { get; private set; }

    /// <summary>The rows that are shown: doubtful ones first, each in the order of the file.</summary>
    public IReadOnlyList<LoadedPlot> Shown => [.. (Found?.Plots ?? []).OrderBy(one => one.Doubts.Count == 0).ThenBy(one => one.Row).Take(MostShown)];

    /// <summary>Whether the box of a plot is ticked: as it was sent, else as it is proposed.</summary>
    public bool IsLeftOut(LoadedPlot plot) => Listed is { } listed && listed.Contains(plot.Row) ? Input.Leave.Contains(plot.Row) : plot.IsHeld;

    public PlotMap? Map()
    {
        List<Plot> plots = [.. (Found?.Plots ?? []).Select(one => one.Plot)];
        return PlotMap.Near(plots) is { } view ? PlotMap.Of(view, world.Outlines, Producer?.CountryCode, plots) : null;
    }

    protected override bool IsThere => Producer is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return !IsThere || (SentFile is not null && Found is null && ModelState.IsValid) ? NotFound() : Page();
    }

    public async Task<IActionResult> OnPostReadAsync(CancellationToken cancellationToken)
    {
        if (!await db.Producers.AnyAsync(one => one.Id == Id, cancellationToken))
        {
            return NotFound();
        }

        Rule.Require(Input.File is { Length: > 0 }, "Choose a file of plots: GeoJSON, or CSV with the columns name, longitude, latitude.", "");
        var file = await loading.ParkAsync(Input.File, User.Person(), cancellationToken);
        return RedirectToPage(new { Id, file });
    }

    public async Task<IActionResult> OnPostKeepAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Found is not { } found)
        {
            return ModelState.IsValid ? NotFound() : Page();
        }

        var rows = found.Plots.Where(one => !IsLeftOut(one)).Select(one => one.Row).ToHashSet();
        var added = await loading.StoreAsync(found, rows, cancellationToken);
        var (left, refused) = (found.Plots.Count - added, found.Refused.Count);
        Say($"{Figures.Count(added, "plot is", "plots are")} added{(left > 0 ? $", {Figures.Count(left)} left out" : "")}{(refused > 0 ? $", {Figures.Count(refused)} refused" : "")}.");
        return RedirectToPage("Plots", new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Producer = await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (Producer is not { } producer || SentFile is not { } file)
        {
            return;
        }

        try
        {
            Found = await loading.ReadParkedAsync(file, producer, User.Person(), cancellationToken);
        }
        catch (RuleBrokenException broken)
        {
            // A file of another kind that this person sent: the page asks for a file of plots instead.
            ModelState.AddModelError("", broken.Message);
        }
    }

    private HashSet<int>? Listed => Input.Listed is { Length: > 0 } listed
        ? [.. listed.Split(',').Select(one => int.TryParse(one, CultureInfo.InvariantCulture, out var row) ? row : 0)]
        : null;

    public sealed class LoadForm
    {
        public IFormFile? File { get; set; }

        /// <summary>The rows whose boxes were shown.</summary>
        public string? Listed { get; set; }

        /// <summary>The rows whose box is ticked.</summary>
        public List<int> Leave { get; set; } = [];
    }
}
