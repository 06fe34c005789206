using GreenLedger.Data.Offers;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Offers;

public sealed class SuppliersModel(SupplierQuery suppliers) : PageModel
{
    private static readonly TableColumn<SupplierRow>[] Columns =
    [
        TableColumn<SupplierRow>.Text("Supplier", row => row.Name, 32),
        TableColumn<SupplierRow>.Text("Kind", row => row.Kind.Word()),
        TableColumn<SupplierRow>.Text("Country", row => row.Country ?? row.CountryCode),
        TableColumn<SupplierRow>.Text("Language", row => row.Language, 10),
        TableColumn<SupplierRow>.Text("E-mail", row => row.Email, 32),
        TableColumn<SupplierRow>.Count("On offer", row => row.OnOffer),
        TableColumn<SupplierRow>.Count("Offers in all", row => row.Offers),
    ];

    [BindProperty(SupportsGet = true, Name = "search")]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true, Name = "sort")]
    public string? Sort { get; set; }

    public IReadOnlyList<SupplierRow> Suppliers { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        Paging = Paging.Of(number, await suppliers.CountAsync(Search, cancellationToken), "supplier", "suppliers");
        Suppliers = await suppliers.ListAsync(Search, Sort, Paging.Skip, Paging.Size, cancellationToken);
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        var rows = await suppliers.ListAsync(Search, Sort, 0, null, cancellationToken);
        var stream = new MemoryStream();
        await TableWorkbook.WriteAsync(stream, "Suppliers", Columns, rows, cancellationToken);
        stream.Position = 0;
        return File(stream, TableWorkbook.MediaType, "suppliers.xlsx");
    }
}
