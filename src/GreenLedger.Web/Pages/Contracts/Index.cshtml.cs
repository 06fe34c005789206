using GreenLedger.Data.Contracts;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Contracts;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Contracts;

public sealed class IndexModel(ContractQuery query, HouseZone house) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true)]
    public GoodsState? Goods { get; set; }

    [BindProperty(SupportsGet = true)]
    public PriceState? Price { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Month { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool? ToSign { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Sort { get; set; }

    public IReadOnlyList<Contract> Rows { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public bool HasAny { get; private set; }

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        HasAny = await query.CountAsync(new ContractFilter(), cancellationToken) > 0;
        if (Filter is { } filter)
        {
            Paging = Paging.Of(number, await query.CountAsync(filter, cancellationToken), "contract", "contracts");
            Rows = await query.ListAsync(filter, Sort, Paging.Skip, Paging.Size, cancellationToken);
        }
    }

    /// <summary>What the list shows, every page of it, as a workbook.</summary>
    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        TableColumn<Contract>[] columns =
        [
            TableColumn<Contract>.Text("Contract", row => row.Ref, 12),
            TableColumn<Contract>.Text("Seller", row => row.Terms.Seller, 28),
            TableColumn<Contract>.Text("Lots", row => string.Join(", ", row.Terms.Lots.Select(ContractFigures.Lot)), 40),
            TableColumn<Contract>.Text("Goods", row => row.Goods.Word(), 18),
            TableColumn<Contract>.Text("Price", row => row.Price.Word(), 14),
            TableColumn<Contract>.Text("Agreed", row => ContractFigures.Price(row.Terms.Price), 22),
            TableColumn<Contract>.Number("Net, kg", row => row.NetWeight.Kilograms),
            TableColumn<Contract>.Text("Open against", row => row.OpenMonth?.ToString(), 12),
            TableColumn<Contract>.Number("Open, kg", row => row.OpenWeight.Kilograms),
            TableColumn<Contract>.Text("Delivery rule", row => row.Terms.Delivery.Incoterm.Word(), 12),
            TableColumn<Contract>.Text("Place", row => row.Terms.Delivery.Place, 20),
            TableColumn<Contract>.Day("Shipment from", row => row.ShipFrom),
            TableColumn<Contract>.Day("Shipment until", row => row.ShipUntil),
            TableColumn<Contract>.Day("Signed on", row => row.InForce?.SignedOn),
            TableColumn<Contract>.Day("On board", row => row.ShippedOn),
        ];
        return await this.WorkbookAsync("Contracts", columns, Filter is { } filter ? await query.ListAsync(filter, Sort, 0, null, cancellationToken) : [], cancellationToken);
    }

    /// <summary>Null where the month that was typed is none: then no contract fits.</summary>
    private ContractFilter? Filter => string.IsNullOrWhiteSpace(Month)
        ? new ContractFilter(Search, Goods, Price, IsUnsigned: ToSign == true)
        : FuturesMonth.TryParse(Month, house.Today, out var month) ? new ContractFilter(Search, Goods, Price, month, IsUnsigned: ToSign == true) : null;
}
