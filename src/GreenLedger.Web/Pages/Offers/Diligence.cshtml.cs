using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Documents.Origins;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Origins;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>What is held about where a lot grew, what is missing, and the plots as a file for the statement.</summary>
[RequestFormLimits(ValueCountLimit = 65_536)]
public sealed class DiligenceModel(LedgerContext db, WorldMap world) : FormPage
{
    /// <summary>The lot.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Lot> Id { get; set; }

    [BindProperty]
    public DiligenceForm Input { get; set; } = new();

    public Lot? Lot { get; private set; }

    public DueDiligence Held { get; private set; } = null!;

    /// <summary>All plots of the lot's producer.</summary>
    public IReadOnlyList<Plot> Plots { get; private set; } = [];

    public Producer? Producer { get; private set; }

    public IReadOnlyList<string> Missing { get; private set; } = [];

    /// <summary>What is doubtful about the plots that it is said to have grown on.</summary>
    public IReadOnlyList<string> Doubts { get; private set; } = [];

    public bool IsLowRisk { get; private set; }

    protected override bool IsThere => Lot is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (!IsThere)
        {
            return NotFound();
        }

        Input = new DiligenceForm
        {
            Version = Held.Version,
            Role = Held.Role,
            ProducedFrom = Held.ProducedFrom,
            ProducedUntil = Held.ProducedUntil,
            Legality = Held.Legality,
            Deforestation = Held.Deforestation,
            Risk = Held.Risk,
            StatementReference = Held.StatementReference,
            VerificationNumber = Held.VerificationNumber,
            Plots = [.. Held.Plots.Select(one => one.PlotId.Value)],
        };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var lot = await db.Lots.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (lot is null)
        {
            return NotFound();
        }

        var held = await db.DueDiligences.Include(one => one.Plots).SingleOrDefaultAsync(one => one.LotId == Id, cancellationToken);
        if (held is null)
        {
            held = new DueDiligence(Id);
            db.Add(held);
        }
        else
        {
            OpenedOn(held, Input.Version);
        }

        held.State(new DiligenceFacts(Input.Role, Input.ProducedFrom, Input.ProducedUntil, Input.Legality, Input.Deforestation, Input.Risk, Input.StatementReference, Input.VerificationNumber));
        var chosen = Input.Plots.ConvertAll(id => new Id<Plot>(id));
        Rule.Require(await db.Plots.CountAsync(plot => chosen.Contains(plot.Id) && plot.ProducerId == lot.ProducerId, cancellationToken) == chosen.Distinct().Count(), "Choose plots of the lot's own producer.", "");
        held.GrewOn(chosen);
        await db.SaveChangesAsync(cancellationToken);
        Say("Saved.");
        return RedirectToPage();
    }

    /// <summary>The plots of the lot as the EU's system reads them, packed where its limit makes several files.</summary>
    public async Task<IActionResult> OnGetGeoJsonAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Lot is null || Producer is null)
        {
            return NotFound();
        }

        var chosen = Held.Plots.Select(one => one.PlotId).ToHashSet();
        var download = PlotExport.Download(Plots.Where(plot => chosen.Contains(plot.Id)).Select(plot => new ExportedPlot(Producer.Name, plot)));
        return File(download.Content, download.MediaType, download.FileName);
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Lot = await db.Lots.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (Lot is not { } lot)
        {
            return;
        }

        Held = await db.DueDiligences.AsNoTracking().Include(one => one.Plots).SingleOrDefaultAsync(one => one.LotId == Id, cancellationToken) ?? new DueDiligence(Id);
        Producer = await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == lot.ProducerId, cancellationToken);
        Plots = await db.Plots.AsNoTracking().Where(plot => plot.ProducerId == lot.ProducerId).OrderBy(plot => plot.Name).ToListAsync(cancellationToken);
        IsLowRisk = await db.Countries.AnyAsync(country => country.Code == lot.CountryCode && country.IsLowRisk, cancellationToken);
        var chosen = Held.Plots.Select(one => one.PlotId).ToHashSet();
        Doubts = PlotDoubts.Of([.. Plots.Where(plot => chosen.Contains(plot.Id))], Producer?.CountryCode, world.Outlines);
        Missing = Held.Missing(lot, lot.SupplierId is not null, IsLowRisk);
    }

    public sealed class DiligenceForm
    {
        public int Version { get; set; }

        [Display(Name = "For this purchase the house is")]
        public DiligenceRole Role { get; set; }

        [Display(Name = "Produced from")]
        public DateOnly? ProducedFrom { get; set; }

        [Display(Name = "Produced until")]
        public DateOnly? ProducedUntil { get; set; }

        [Display(Name = "Grown by the law of the country")]
        public string? Legality { get; set; }

        [Display(Name = "Not deforested after 31 December 2020")]
        public string? Deforestation { get; set; }

        [Display(Name = "Risk, and what lessened it")]
        public string? Risk { get; set; }

        [Display(Name = "Reference number of the statement")]
        public string? StatementReference { get; set; }

        [Display(Name = "Verification number")]
        public string? VerificationNumber { get; set; }

        public List<Guid> Plots { get; set; } = [];
    }
}
