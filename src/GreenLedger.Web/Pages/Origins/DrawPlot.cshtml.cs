using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Origins;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

/// <summary>A new plot of a producer, drawn on the map or typed; the map moves without losing what was drawn.</summary>
public sealed class DrawPlotModel(LedgerContext db, WorldMap world) : FormPage
{
    /// <summary>How many kilometres across a place is shown that somebody goes to.</summary>
    private const double CloseBy = 3;

    /// <summary>The producer.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Producer> Id { get; set; }

    /// <summary>The middle of the map.</summary>
    [BindProperty(SupportsGet = true)]
    public string? At { get; set; }

    /// <summary>How many kilometres it shows.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Across { get; set; }

    [BindProperty]
    public DrawnForm Input { get; set; } = new();

    public Producer? Producer { get; private set; }

    public IReadOnlyList<Plot> Plots { get; private set; } = [];

    public MapView View { get; private set; } = MapView.World;

    public PlotMap Map => PlotMap.Of(View, world.Outlines, Producer?.CountryCode, Plots);

    protected override bool IsThere => Producer is not null;

    protected override bool IsJudged => Request.Query["handler"] != "Look";

    public PlotJudgement Judged() => PlotJudgement.Of(Input.Corners, Drawn, Plots, Producer?.CountryCode, world.Outlines);

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return IsThere ? Page() : NotFound();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (!await db.Producers.AnyAsync(one => one.Id == Id, cancellationToken))
        {
            return NotFound();
        }

        var plot = new Plot(Id, Input.Name ?? "", Input.CountryCode ?? "", PlotCorners.Shape(Input.Corners), Input.Hectares);
        db.Add(plot);
        await db.SaveChangesAsync(cancellationToken);
        Say(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{plot.Name} is added: {plot.Hectares:#,0.0000} ha."));
        return RedirectToPage("Plots", new { Id });
    }

    /// <summary>Shows another part of the map, and what is drawn so far; stores nothing.</summary>
    /// <param name="move">Where to, in a word of the buttons.</param>
    public async Task<IActionResult> OnPostLookAsync(string? move, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (!IsThere)
        {
            return NotFound();
        }

        // Looking asks for nothing, so nothing is missing yet; what was typed stays.
        ModelState.ClearValidationState(nameof(Input));
        if (move == "go")
        {
            Rule.Require(PlotCorners.Position(Input.GoTo) is not null, "Write a longitude, a comma and a latitude, such as -75.9, 2.", nameof(Input.GoTo));
            View = View.To(PlotCorners.Position(Input.GoTo)!.Value, CloseBy);
        }

        View = move switch
        {
            "nearer" => View.Nearer(),
            "farther" => View.Farther(),
            "west" => View.Moved(-0.5, 0),
            "east" => View.Moved(0.5, 0),
            "north" => View.Moved(0, 0.5),
            "south" => View.Moved(0, -0.5),
            "country" => PlotMap.Whole(world.Outlines, Producer?.CountryCode),
            "plots" => PlotMap.Near(Plots) ?? View,
            _ => View,
        };
        return Page();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Producer = await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        Plots = await db.Plots.AsNoTracking().Where(plot => plot.ProducerId == Id).OrderBy(plot => plot.Name).ThenBy(plot => plot.Id).ToListAsync(cancellationToken);
        Input.CountryCode ??= Producer?.CountryCode;
        View = MapView.Read(At, Across) ?? PlotMap.Near(Plots) ?? PlotMap.Whole(world.Outlines, Producer?.CountryCode);
    }

    /// <summary>The plot as it would be; what is not named yet is called so.</summary>
    private Plot Drawn(PlotShape shape) =>
        new(Id, string.IsNullOrWhiteSpace(Input.Name) ? "This plot" : Input.Name, Input.CountryCode ?? "", shape, Input.Hectares);

    public sealed class DrawnForm
    {
        [Required(ErrorMessage = "What is the plot called?")]
        public string? Name { get; set; }

        [Required(ErrorMessage = "In which country does it lie?")]
        [Display(Name = "Country")]
        public string? CountryCode { get; set; }

        [Required(ErrorMessage = "Draw the plot on the map, or write a longitude and a latitude in each line.")]
        [Display(Name = "Longitude, latitude (°)")]
        public string? Corners { get; set; }

        [Display(Name = "Area of a point (ha)")]
        public decimal? Hectares { get; set; }

        [Display(Name = "Go to longitude, latitude")]
        public string? GoTo { get; set; }
    }
}
