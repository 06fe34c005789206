using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Documents.Origins;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Display;
using GreenLedger.Web.Offers;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

/// <summary>What is held about where a lot grew, what is missing, and the plots as a file for the statement.</summary>
[RequestFormLimits(ValueCountLimit = 65_536)]
internal sealed class DiligenceModel(LedgerContext db, DiligenceQuery query, PapersReader papers, DiligenceActs acts, AttachmentRules rules, HouseZone house) : FormPage
{
    /// <summary>The lot.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Lot> Id { get; set; }

    [BindProperty]
    public DiligenceForm Input { get; set; } = new();

    public DiligenceView View { get; private set; } = null!;

    public string FileHint => rules.Hint;

    /// <summary>What an open session seals keeps its papers to itself.</summary>
    public bool MayReadPapers { get; private set; }

    /// <summary>Whether its files may be removed: not while they are to be kept.</summary>
    public bool MayRemove => View.KeptUntil is not { } until || house.Today > until;

    /// <summary>Whether this person may take back a file that is to be kept, as attached by mistake.</summary>
    public bool MayTakeBack(Attachment file) => !MayRemove && View.Held.MayTakeBack(file, User.Person(), house.Today, house.Zone);

    protected override bool IsThere => View is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (!IsThere)
        {
            // The history knows it by its own identity.
            var lots = await db.DueDiligences.Where(one => one.Id == new Id<DueDiligence>(Id.Value)).Select(one => one.LotId).ToListAsync(cancellationToken);
            return lots is [var lot] ? RedirectToPage(new { id = lot }) : NotFound();
        }

        var held = View.Held;
        Input = new DiligenceForm
        {
            Version = held.Version,
            Role = held.Role,
            ProducedFrom = held.ProducedFrom,
            ProducedUntil = held.ProducedUntil,
            Legality = held.Legality,
            Deforestation = held.Deforestation,
            Risk = held.Risk,
            StatementReference = held.StatementReference,
            VerificationNumber = held.VerificationNumber,
            PlacedOn = held.PlacedOn,
            Harvest = held.Harvest?.Kilograms,
            HarvestForm = held.HarvestForm,
            Plots = [.. held.Plots.Select(one => one.PlotId.Value)],
        };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var facts = new DiligenceFacts(Input.Role, Input.ProducedFrom, Input.ProducedUntil, Input.Legality, Input.Deforestation, Input.Risk, Input.StatementReference, Input.VerificationNumber, Input.PlacedOn)
        {
            Harvest = Input.Harvest is { } kilograms ? Weight.FromKilograms(kilograms) : null,
            HarvestForm = Input.HarvestForm,
        };
        if (await acts.StateAsync(Id, Input.Version, facts, Input.Plots.ConvertAll(id => new Id<Plot>(id)), cancellationToken) is null)
        {
            return NotFound();
        }

        foreach (var (kind, sent) in new[] { (EvidenceKind.Legality, Input.LegalityFile), (EvidenceKind.Deforestation, Input.DeforestationFile), (EvidenceKind.Risk, Input.RiskFile) }.Where(one => one.Item2 is not null))
        {
            await acts.TakeAsync(Id, kind, sent, User.Person(), cancellationToken);
        }

        await db.SaveChangesAsync(cancellationToken);
        Say("Saved.");
        return RedirectToPage();
    }

    /// <summary>The plots of the lot as the EU's system reads them, packed where its limit makes several files.</summary>
    public async Task<IActionResult> OnGetGeoJsonAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (!IsThere || View.Producer is not { } producer)
        {
            return NotFound();
        }

        var download = PlotExport.Download(View.Grown.Select(plot => new ExportedPlot(producer.Name, plot)), View.Habits.ExportBytes);
        return File(download.Content, download.MediaType, download.FileName);
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        View = (await query.FindAsync(Id, cancellationToken))!;
        MayReadPapers = await papers.MayReadAsync(PapersOn.The(Id));
    }

    internal sealed class DiligenceForm
    {
        public int Version { get; set; }

        [Display(Name = "For this purchase the house is")]
        public DiligenceRole Role { get; set; }

        [Display(Name = "Produced from")]
        public DateOnly? ProducedFrom { get; set; }

        [Display(Name = "Produced until")]
        public DateOnly? ProducedUntil { get; set; }

        [Display(Name = "Placed on the market on")]
        public DateOnly? PlacedOn { get; set; }

        [Display(Name = "What the plots gave (kg)")]
        public decimal? Harvest { get; set; }

        [Display(Name = "Weighed as")]
        public CoffeeForm HarvestForm { get; set; }

        [Display(Name = "Grown by the law of the country")]
        public string? Legality { get; set; }

        [Display(Name = "Not deforested")]
        public string? Deforestation { get; set; }

        [Display(Name = "Risk, and what lessened it")]
        public string? Risk { get; set; }

        [Display(Name = "A file that shows the legality")]
        public IFormFile? LegalityFile { get; set; }

        [Display(Name = "A file that shows no deforestation")]
        public IFormFile? DeforestationFile { get; set; }

        [Display(Name = "A file about the risk")]
        public IFormFile? RiskFile { get; set; }

        [Display(Name = "Reference number of the statement")]
        public string? StatementReference { get; set; }

        [Display(Name = "Verification number")]
        public string? VerificationNumber { get; set; }

        public List<Guid> Plots { get; set; } = [];
    }
}
