using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Documents.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Stock;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Labels for the lots that lie in a warehouse, or in all of them.</summary>
public sealed class LabelsModel(LedgerContext db, StockQuery query) : PageModel
{
    private const int MostLots = 500;
    private const int MostEach = 100;

    [BindProperty(SupportsGet = true)]
    public string? Q { get; set; }

    [BindProperty(SupportsGet = true)]
    public Id<Warehouse>? Warehouse { get; set; }

    /// <summary>How many labels each lot gets.</summary>
    [BindProperty(SupportsGet = true)]
    public int Each { get; set; } = 1;

    [BindProperty(SupportsGet = true)]
    public string? Sheet { get; set; } = LabelSheet.Usual[0].Code;

    /// <summary>The first free place of the sheet, from 1.</summary>
    [BindProperty(SupportsGet = true)]
    public int From { get; set; } = 1;

    public LabelPlace Place => new(Sheet, From);

    public IReadOnlyList<Warehouse> Warehouses { get; private set; } = [];

    public IReadOnlyList<(Id<Lot> Id, string Ref, string Name)> Lots { get; private set; } = [];

    public string? Trouble { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Warehouses = await db.Warehouses.AsNoTracking().OrderBy(one => one.Name).ToListAsync(cancellationToken);
        Lots = [.. (await query.ListAsync(Q, Warehouse, null, cancellationToken)).Select(row => (row.LotId, row.LotRef, row.LotName)).Distinct().Take(MostLots)];
    }

    public async Task<IActionResult> OnGetPdfAsync(CancellationToken cancellationToken)
    {
        await OnGetAsync(cancellationToken);
        if (!ModelState.IsValid || Place.Known is not { } sheet)
        {
            Trouble = Place.Trouble;
            return Page();
        }

        if (Each is < 1 or > MostEach)
        {
            Trouble = $"Print from 1 to {MostEach} labels for each lot.";
            return Page();
        }

        if (Lots.Count == 0)
        {
            return Page();
        }

        var house = await db.Houses.Select(one => one.Name).SingleAsync(cancellationToken);
        var labels = Lots.SelectMany(lot => Enumerable.Repeat(new LotLabel(lot.Ref, lot.Name, AddressOf(lot.Id)), Each)).ToList();
        var file = new MemoryStream();
        LotLabels.Write(sheet, labels, From, house, file);
        file.Position = 0;
        return File(file, LotLabels.MediaType);
    }

    private string AddressOf(Id<Lot> lot) => $"{Request.Scheme}://{Request.Host}{Request.PathBase}/l/{lot}";
}
