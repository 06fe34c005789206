using GreenLedger.Data;
using GreenLedger.Documents.Origins;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Origins;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

/// <summary>Where a producer grows: plots on a map, and out again as a file.</summary>
public sealed class PlotsModel(LedgerContext db, OriginActs acts, WorldMap world) : FormPage
{
    /// <summary>The producer.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Producer> Id { get; set; }

    /// <summary>The middle of the map, longitude and latitude.</summary>
    [BindProperty(SupportsGet = true)]
    public string? At { get; set; }

    /// <summary>How many kilometres the map shows from west to east.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Across { get; set; }

    public Producer? Producer { get; private set; }

    public IReadOnlyList<Plot> Plots { get; private set; } = [];

    public MapView View { get; private set; } = MapView.World;

    public PlotMap Map => PlotMap.Of(View, world.Outlines, Producer?.CountryCode, Plots);

    public IReadOnlyList<string> Doubts { get; private set; } = [];

    protected override bool IsThere => Producer is not null;

    /// <summary>Where the map can be moved to, in words.</summary>
    public IEnumerable<(string Words, MapView To)> Moves()
    {
        (string, MapView?)[] moves =
        [
            ("Nearer", View.Nearer()), ("Farther", View.Farther()), ("West", View.Moved(-0.5, 0)), ("North", View.Moved(0, 0.5)), ("South", View.Moved(0, -0.5)), ("East", View.Moved(0.5, 0)),
            ("Whole country", PlotMap.Whole(world.Outlines, Producer?.CountryCode)), ("Near the plots", PlotMap.Near(Plots)),
        ];
        return moves.Where(move => move.Item2 is not null).Select(move => (move.Item1, move.Item2!));
    }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return IsThere ? Page() : NotFound();
    }

    public async Task<IActionResult> OnPostRemoveAsync(Id<Plot> plot, CancellationToken cancellationToken)
    {
        if (await acts.RemoveAsync(plot, Id, cancellationToken) is not { } known)
        {
            return NotFound();
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"{known.Name} is removed; the history keeps it.");
        return RedirectToPage();
    }

    /// <summary>As the EU's system reads it; packed where its limit makes several files.</summary>
    public async Task<IActionResult> OnGetGeoJsonAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Producer is not { } producer)
        {
            return NotFound();
        }

        var download = PlotExport.Download(Plots.Select(plot => new ExportedPlot(producer.Name, plot)));
        return File(download.Content, download.MediaType, download.FileName);
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Producer = await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        Plots = await db.Plots.AsNoTracking().Where(plot => plot.ProducerId == Id).OrderBy(plot => plot.Name).ThenBy(plot => plot.Id).ToListAsync(cancellationToken);
        Doubts = PlotDoubts.Of(Plots, Producer?.CountryCode, world.Outlines);
        View = MapView.Read(At, Across) ?? PlotMap.Near(Plots) ?? PlotMap.Whole(world.Outlines, Producer?.CountryCode);
    }
}
