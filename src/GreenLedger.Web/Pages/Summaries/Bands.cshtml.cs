using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Summaries;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Summaries;

/// <summary>The bands of quality of the house.</summary>
public sealed class BandsModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public BandsForm Input { get; set; } = new();

    public IReadOnlyList<SelectListItem> Forms { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var bands = await FindAsync(cancellationToken) ?? new QualityBands();
        Input = new BandsForm { Version = bands.Version, FormId = bands.FormId, Bands = [.. bands.Bands.Select(band => new BandLine { Name = band.Name, FromPoints = band.From.Points })] };
        while (Input.Bands.Count < QualityBands.MostBands)
        {
            Input.Bands.Add(new BandLine());
        }

        await LoadAsync(cancellationToken);
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var bands = await FindAsync(cancellationToken);
        if (bands is null)
        {
            bands = new QualityBands();
            db.Add(bands);
        }
        else
        {
            OpenedOn(bands, Input.Version);
        }

        Rule.Require(await db.CuppingForms.AnyAsync(form => form.Id == Input.FormId, cancellationToken), "Choose the cupping form.", nameof(Input.FormId));
        bands.State(Input.FormId, Input.Stated());
        await db.SaveChangesAsync(cancellationToken);
        Say("The purchase summary reads scores by these bands from now on.");
        return RedirectToPage("Bands");
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Forms = [.. (await db.CuppingForms.AsNoTracking().OrderBy(form => form.Name).ToListAsync(cancellationToken)).Select(form => new SelectListItem(form.ToString(), form.Id.ToString()))];

    private Task<QualityBands?> FindAsync(CancellationToken cancellationToken) => db.QualityBands.StatedAsync(cancellationToken);

    public sealed class BandLine
    {
        public string? Name { get; set; }

        [Display(Name = "From, points")]
        public decimal? FromPoints { get; set; }
    }

    public sealed class BandsForm
    {
        public int Version { get; set; }

        [Display(Name = "Cupping form")]
        public Id<CuppingForm> FormId { get; set; }

        public List<BandLine> Bands { get; set; } = [];

        /// <exception cref="RuleBrokenException">A named band begins nowhere.</exception>
        internal IReadOnlyList<QualityBand> Stated()
        {
            var named = Bands.Where(band => !string.IsNullOrWhiteSpace(band.Name) || band.FromPoints is not null).ToList();
            Rule.Require(named.TrueForAll(band => band.FromPoints is not null), "From how many points does each band count? Fill it in, or clear its name.", nameof(Bands));
            return named.ConvertAll(band => new QualityBand(band.Name ?? "", Score.Of(band.FromPoints!.Value)));
        }
    }
}
