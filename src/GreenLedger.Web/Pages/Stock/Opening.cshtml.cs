using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Stock.Reading;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>Opening stock from a file: choose it, see what it would do, take it in.</summary>
[RequestSizeLimit(32 * 1024 * 1024)]
public sealed class OpeningModel(LedgerContext db, OpeningStock opening, HouseZone house) : FormPage
{
    public const int MostShown = 200;

    /// <summary>The file that was sent; null before.</summary>
    [BindProperty(SupportsGet = true, Name = "file")]
    public Id<StoredFile>? SentFile { get; set; }

    [BindProperty(SupportsGet = true)]
    public OpeningForm Input { get; set; } = new();

    public IReadOnlyList<SelectListItem> Warehouses { get; private set; } = [];

    public OpeningPreview? Found { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        Input.On ??= house.Today;
        await LoadAsync(cancellationToken);
        return SentFile is not null && Found is null && ModelState.IsValid ? NotFound() : Page();
    }

    /// <summary>An empty file with our headings.</summary>
    public async Task<IActionResult> OnGetEmptyAsync(CancellationToken cancellationToken)
    {
        var stream = new MemoryStream();
        var columns = Enum.GetValues<OpeningColumn>().Select(column => TableColumn<string>.Text(OpeningWords.Heading(column), row => row, 16)).ToList();
        await TableWorkbook.WriteAsync(stream, "Opening stock", columns, [], cancellationToken);
        stream.Position = 0;
        return File(stream, TableWorkbook.MediaType, "opening-stock.xlsx");
    }

    public async Task<IActionResult> OnPostReadAsync(CancellationToken cancellationToken)
    {
        Rule.Require(Input.File is not null, "Choose the file with the stock.", nameof(Input.File));
        var file = await opening.ParkAsync(Input.File, User.Person(), cancellationToken);
        return RedirectToPage(new { file });
    }

    public async Task<IActionResult> OnPostStoreAsync(CancellationToken cancellationToken)
    {
        if (SentFile is not { } id || await opening.ReadParkedAsync(id, User.Person(), Defaults(), cancellationToken) is not { } preview)
        {
            return NotFound();
        }

        await opening.StoreAsync(preview, User.Person(), cancellationToken);
        Say($"{Figures.Count(preview.Lines.Count, "row is", "rows are")} taken into stock, {Figures.Weight(preview.Weighed, User.ShowsPounds())}; {Figures.Count(preview.SetAside.Count)} set aside.");
        return RedirectToPage("Index");
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var warehouses = await db.Warehouses.AsNoTracking().OrderBy(one => one.Name).ToListAsync(cancellationToken);
        Warehouses = [.. warehouses.Select(one => new SelectListItem(one.Name, one.Id.ToString()))];
        Input.WarehouseId ??= warehouses is [var only] ? only.Id : null;
        try
        {
            Found = SentFile is { } id ? await opening.ReadParkedAsync(id, User.Person(), Defaults(), cancellationToken) : null;
        }
        catch (RuleBrokenException broken)
        {
            // A file of another kind that this person sent: the page asks for a list of stock instead.
            ModelState.AddModelError("", broken.Message);
        }
    }

    private OpeningDefaults Defaults() => new(Input.WarehouseId, Input.On ?? house.Today);

    public sealed class OpeningForm
    {
        public IFormFile? File { get; set; }

        [Display(Name = "Warehouse")]
        public Id<Warehouse>? WarehouseId { get; set; }

        [Display(Name = "Day")]
        public DateOnly? On { get; set; }
    }
}
