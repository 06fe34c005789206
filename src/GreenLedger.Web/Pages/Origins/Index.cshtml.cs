using GreenLedger.Data;
using GreenLedger.Data.Origins;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

public sealed class IndexModel(ProducerQuery producers, LedgerContext db) : PageModel
{
    private static readonly TableColumn<ProducerRow>[] Columns =
    [
        TableColumn<ProducerRow>.Text("Producer", row => row.Name, 32),
        TableColumn<ProducerRow>.Text("Kind", row => row.Kind.Word()),
        TableColumn<ProducerRow>.Text("Origin", row => row.Country ?? row.CountryCode),
        TableColumn<ProducerRow>.Text("Region", row => row.Region),
        TableColumn<ProducerRow>.Text("Place", row => row.Place),
        TableColumn<ProducerRow>.Count("Altitude from, m", row => row.AltitudeFrom),
        TableColumn<ProducerRow>.Count("Altitude to, m", row => row.AltitudeTo),
        TableColumn<ProducerRow>.Count("Lots", row => row.Lots),
    ];

    [BindProperty(SupportsGet = true, Name = "search")]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true, Name = "origin")]
    public string? Origin { get; set; }

    [BindProperty(SupportsGet = true, Name = "sort")]
    public string? Sort { get; set; }

    public IReadOnlyList<ProducerRow> Producers { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Origins { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public bool IsFiltered => !string.IsNullOrEmpty(Search) || !string.IsNullOrEmpty(Origin);

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        Paging = Paging.Of(number, await producers.CountAsync(Search, Origin, cancellationToken), "producer", "producers");
        Producers = await producers.ListAsync(Search, Origin, Sort, Paging.Skip, Paging.Size, cancellationToken);
        Origins = await db.Countries.OrderBy(country => country.Name)
            .Where(country => db.Producers.Any(producer => producer.CountryCode == country.Code))
            .Select(country => new SelectListItem(country.Name, country.Code)).ToListAsync(cancellationToken);
    }

    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        var rows = await producers.ListAsync(Search, Origin, Sort, 0, null, cancellationToken);
        var stream = new MemoryStream();
        await TableWorkbook.WriteAsync(stream, "Producers", Columns, rows, cancellationToken);
        stream.Position = 0;
        return File(stream, TableWorkbook.MediaType, "producers.xlsx");
    }
}
