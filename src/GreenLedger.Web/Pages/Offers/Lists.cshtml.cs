using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Documents.Layout;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Display;
using GreenLedger.Web.Offers;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

public sealed class ListsModel(OfferListQuery lists, LedgerContext db) : PageModel
{
    private static readonly TableColumn<OfferListRow>[] Columns =
    [
        TableColumn<OfferListRow>.Text("File", row => row.FileName, 36),
        TableColumn<OfferListRow>.Text("Supplier", row => row.Supplier, 28),
        TableColumn<OfferListRow>.Day("Received", row => row.ReceivedOn),
        TableColumn<OfferListRow>.Count("Accepted", row => row.Accepted),
        TableColumn<OfferListRow>.Count("Revised", row => row.Revised),
        TableColumn<OfferListRow>.Count("Unchanged", row => row.Unchanged),
        TableColumn<OfferListRow>.Count("Set aside", row => row.SetAside),
        TableColumn<OfferListRow>.Count("Still to mend", row => row.Waiting, 14),
        TableColumn<OfferListRow>.Text("Loaded by", row => row.By),
        TableColumn<OfferListRow>.Instant("Loaded, UTC", row => row.At),
    ];

    [BindProperty(SupportsGet = true, Name = "search")]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true, Name = "supplier")]
    public Id<Supplier>? Supplier { get; set; }

    [BindProperty(SupportsGet = true, Name = "waiting")]
    public bool OnlyWaiting { get; set; }

    [BindProperty(SupportsGet = true, Name = "sort")]
    public string? Sort { get; set; }

    public IReadOnlyList<OfferListRow> Lists { get; private set; } = [];

    /// <summary>Long lists that are on their way in.</summary>
    public IReadOnlyList<Job> OnTheWay { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Suppliers { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public bool IsFiltered => !string.IsNullOrWhiteSpace(Search) || Supplier is not null || OnlyWaiting;

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        Paging = Paging.Of(number, await lists.CountAsync(Filter, cancellationToken), "list", "lists");
        Lists = await lists.ListAsync(Filter, Sort, Paging.Skip, Paging.Size, cancellationToken);
        OnTheWay = await db.Jobs.AsNoTracking().Where(job => job.Kind == ListWork.Load && (job.State == JobState.Waiting || job.State == JobState.Running))
            .OrderBy(job => job.At).ToListAsync(cancellationToken);
        var senders = await db.Suppliers.Where(supplier => db.OfferLists.Any(list => list.SupplierId == supplier.Id))
            .OrderBy(supplier => supplier.Name).Select(supplier => new { supplier.Id, supplier.Name }).ToListAsync(cancellationToken);
        Suppliers = [.. senders.Select(supplier => new SelectListItem(supplier.Name, supplier.Id.ToString()))];
    }

    /// <summary>What the page shows, every page of it, as a workbook.</summary>
    public async Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken)
    {
        var rows = await lists.ListAsync(Filter, Sort, 0, null, cancellationToken);
        var stream = new MemoryStream();
        await TableWorkbook.WriteAsync(stream, "Lists received", Columns, rows, cancellationToken);
        stream.Position = 0;
        return File(stream, TableWorkbook.MediaType, "lists-received.xlsx");
    }

    private OfferListFilter Filter => new(Search, Supplier, OnlyWaiting);
}
