using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

public sealed class IndexModel(OfferQuery offers, LedgerContext db) : PageModel
{
    private static readonly TableColumn<OfferRow>[] Columns =
    [
        TableColumn<OfferRow>.Text("Ref", row => row.Ref, 16),
        TableColumn<OfferRow>.Text("Lot", row => row.Lot, 32),
        TableColumn<OfferRow>.Text("Origin", row => row.Country ?? row.CountryCode),
        TableColumn<OfferRow>.Text("Process", row => row.Process),
        TableColumn<OfferRow>.Text("Crop year", row => row.CropYear, 12),
        TableColumn<OfferRow>.Text("Supplier", row => row.Supplier, 28),
        TableColumn<OfferRow>.Number("kg", row => row.Quantity.Kilograms),
        TableColumn<OfferRow>.Number("Least lot, bags", row => row.LeastBags, 0),
        TableColumn<OfferRow>.Number("Price per kg", row => row.Price?.PerKilogram, 4),
        TableColumn<OfferRow>.Text("Currency", row => row.Price?.Currency.Code, 10),
        TableColumn<OfferRow>.Text("Futures month", row => row.Differential?.Month.ToString(), 14),
        TableColumn<OfferRow>.Number("Differential", row => row.Differential?.Quoted),
        TableColumn<OfferRow>.Text("Differential in", row => row.Differential?.Month.Market.QuoteUnit(), 14),
        TableColumn<OfferRow>.Text("Delivery", row => row.Incoterm?.Word(), 14),
        TableColumn<OfferRow>.Text("Place", row => row.Place),
        TableColumn<OfferRow>.Number("Stated score", row => row.StatedScore?.Points),
        TableColumn<OfferRow>.Text("State", row => row.State.Word(), 12),
        TableColumn<OfferRow>.Day("Valid until", row => row.ValidUntil),
        TableColumn<OfferRow>.Day("Revised", row => row.RevisedOn),
    ];

    [BindProperty(SupportsGet = true, Name = "search")]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true, Name = "origin")]
    public string? Origin { get; set; }

    [BindProperty(SupportsGet = true, Name = "process")]
    public Id<ProcessMethod>? Process { get; set; }

    [BindProperty(SupportsGet = true, Name = "supplier")]
    public Id<Supplier>? Supplier { get; set; }

    [BindProperty(SupportsGet = true, Name = "state")]
    public OfferState? State { get; set; }

    [BindProperty(SupportsGet = true, Name = "sort")]
    public string? Sort { get; set; }

    public IReadOnlyList<OfferRow> Offers { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public bool HasAny { get; private set; }

    public IReadOnlyList<SelectListItem> Origins { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Methods { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Suppliers { get; private set; } = [];

    public static IReadOnlyList<SelectListItem> States { get; } =
        [.. Enum.GetValues<OfferState>().Select(state => new SelectListItem(state.Word(), state.ToString()))];

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        var total = await offers.CountAsync(Filter, cancellationToken);
        Paging = Paging.Of(number, total, "offer", "offers");
        Offers = await offers.ListAsync(Filter, Sort, Paging.Skip, Paging.Size, cancellationToken);
        HasAny = total > 0 || await db.Offers.AnyAsync(cancellationToken);
        Origins = await db.Countries.OrderBy(country => country.Name)
            .Where(country => db.Lots.Any(lot => lot.CountryCode == country.Code))
            .Select(country => new SelectListItem(country.Name, country.Code)).ToListAsync(cancellationToken);
        var methods = await db.ProcessMethods.OrderBy(method => method.Name).ToListAsync(cancellationToken);
        Methods = [.. methods.Select(method => new SelectListItem(method.Name, method.Id.ToString()))];
        var suppliers = await db.Suppliers.OrderBy(supplier => supplier.Name)
            .Select(supplier => new { supplier.Id, supplier.Name }).ToListAsync(cancellationToken);
        Suppliers = [.. suppliers.Select(supplier => new SelectListItem(supplier.Name, supplier.Id.ToString()))];
    }

    /// <summary>What the list shows, every page of it, as a workbook.</summary>
    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        var rows = await offers.ListAsync(Filter, Sort, 0, null, cancellationToken);
        var stream = new MemoryStream();
        await TableWorkbook.WriteAsync(stream, "Offers", Columns, rows, cancellationToken);
        stream.Position = 0;
        return File(stream, TableWorkbook.MediaType, "offers.xlsx");
    }

    private OfferFilter Filter => new(Search, Origin, Process, Supplier, State);
}
