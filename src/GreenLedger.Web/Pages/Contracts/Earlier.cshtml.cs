using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Stock.Reading;
using GreenLedger.Web.Contracts;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>Open contracts and past purchases from a file: choose it, see what it would become, take it in.</summary>
[RequestSizeLimit(32 * 1024 * 1024)]
public sealed class EarlierModel(LedgerContext db, EarlierContracts earlier, DraftBasisQuery drafts, HouseZone house) : FormPage
{
    public const int MostShown = 200;

    /// <summary>The file that was sent; null before.</summary>
    [BindProperty(SupportsGet = true, Name = "file")]
    public Id<StoredFile>? SentFile { get; set; }

    [BindProperty(SupportsGet = true)]
    public EarlierForm Input { get; set; } = new();

    public IReadOnlyList<SelectListItem> Warehouses { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Rules { get; } = [.. Enum.GetValues<Incoterm>().Select(rule => new SelectListItem(rule.Word(), rule.ToString()))];

    public IReadOnlyList<SelectListItem> Forms { get; private set; } = [];

    public EarlierPreview? Found { get; private set; }

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
        var columns = Enum.GetValues<EarlierColumn>().Select(column => TableColumn<string>.Text(EarlierWords.Told(column).Heading, row => row, 16)).ToList();
        await TableWorkbook.WriteAsync(stream, "Earlier contracts", columns, [], cancellationToken);
        stream.Position = 0;
        return File(stream, TableWorkbook.MediaType, "earlier-contracts.xlsx");
    }

    public async Task<IActionResult> OnPostReadAsync(CancellationToken cancellationToken)
    {
        Rule.Require(Input.File is not null, "Choose the file with the contracts.", nameof(Input.File));
        var file = await earlier.ParkAsync(Input.File, User.Person(), cancellationToken);
        return RedirectToPage(new { file });
    }

    public async Task<IActionResult> OnPostStoreAsync(CancellationToken cancellationToken)
    {
        if (SentFile is not { } id || await earlier.ReadParkedAsync(id, User.Person(), Defaults(), cancellationToken) is not { } shown)
        {
            return NotFound();
        }

        var taken = await earlier.StoreAsync(shown.FileName, shown.Bytes, id, User.Person(), Defaults(), cancellationToken);
        Say($"{Figures.Count(taken.Taking.Contracts.Count, "contract is", "contracts are")} taken in, {Figures.Weight(taken.Net, User.ShowsPounds())}; {Figures.Count(taken.Taking.SetAside.Count, "row is", "rows are")} set aside.");
        return RedirectToPage("Index");
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var warehouses = await db.Warehouses.AsNoTracking().OrderBy(one => one.Name).ToListAsync(cancellationToken);
        Warehouses = [.. warehouses.Select(one => new SelectListItem(one.Name, one.Id.ToString()))];
        Forms = [.. (await drafts.FormsAsync(cancellationToken)).Select(form => new SelectListItem(form.Title, form.Id.ToString()))];
        Input.WarehouseId ??= warehouses is [var only] ? only.Id : null;
        try
        {
            Found = SentFile is { } id ? await earlier.ReadParkedAsync(id, User.Person(), Defaults(), cancellationToken) : null;
        }
        catch (RuleBrokenException broken)
        {
            // A file of another kind that this person sent: the page asks for a list of contracts instead.
            ModelState.AddModelError("", broken.Message);
        }
    }

    private EarlierDefaults Defaults() => new(Input.WarehouseId, Input.On ?? house.Today, Input.Incoterm, Input.FormId);

    public sealed class EarlierForm
    {
        public IFormFile? File { get; set; }

        [Display(Name = "Warehouse")]
        public Id<Warehouse>? WarehouseId { get; set; }

        [Display(Name = "Day")]
        public DateOnly? On { get; set; }

        [Display(Name = "Delivery rule")]
        public Incoterm? Incoterm { get; set; }

        [Display(Name = "Standard form")]
        public Id<StandardForm>? FormId { get; set; }
    }
}
