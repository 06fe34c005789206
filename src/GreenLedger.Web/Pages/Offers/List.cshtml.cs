using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Documents.Layout;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Web.Display;
using GreenLedger.Web.Papers;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

public sealed class ListModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<OfferList> Id { get; set; }

    /// <summary>Whether the file was loaded once more and said nothing new.</summary>
    [BindProperty(SupportsGet = true)]
    public bool NothingNew { get; set; }

    public OfferList List { get; private set; } = null!;

    public Supplier Supplier { get; private set; } = null!;

    public string By { get; private set; } = "";

    public int Waiting { get; private set; }

    public IReadOnlyList<SetAsideRow> SetAside { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public async Task<IActionResult> OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        var list = await db.OfferLists.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (list is null)
        {
            return NotFound();
        }

        List = list;
        Supplier = await db.Suppliers.AsNoTracking().SingleAsync(one => one.Id == list.SupplierId, cancellationToken);
        By = await db.People.Where(person => person.Id == list.By).Select(person => person.Name).SingleAsync(cancellationToken);
        Waiting = await db.SetAsideRows.OfList(Id).Waiting().CountAsync(cancellationToken);
        Paging = Paging.Of(number, list.SetAsideCount, "row set aside", "rows set aside");
        SetAside = await db.SetAsideRows.AsNoTracking().OfList(Id).OrderBy(row => row.MendedAt != null).ThenBy(row => row.Sheet).ThenBy(row => row.RowNumber)
            .Skip(Paging.Skip).Take(Paging.Size).ToListAsync(cancellationToken);
        return Page();
    }

    /// <summary>The file as it was received, as a download only.</summary>
    public async Task<IActionResult> OnGetFileAsync(CancellationToken cancellationToken)
    {
        var fileId = await db.OfferLists.Where(one => one.Id == Id).Select(one => one.StoredFileId).SingleOrDefaultAsync(cancellationToken);
        var file = await db.StoredFiles.AsNoTracking().Include(one => one.Content).SingleOrDefaultAsync(one => one.Id == fileId, cancellationToken);
        if (file is null)
        {
            return NotFound();
        }

        AttachmentDownload.Guard(Response);
        return File(file.Content!.Bytes, "application/octet-stream", file.Name);
    }

    /// <summary>The rows that wait to be mended, as a workbook.</summary>
    public Task<IActionResult> OnGetSetAsideAsync(CancellationToken cancellationToken) => ExportAsync(
        (stream, columns, rows) => TableWorkbook.WriteAsync(stream, "Set aside", columns, rows, cancellationToken), TableWorkbook.MediaType, ".xlsx", cancellationToken);

    /// <summary>The same as a text table.</summary>
    public Task<IActionResult> OnGetSetAsideTextAsync(CancellationToken cancellationToken) => ExportAsync(
        (stream, columns, rows) => TableText.WriteAsync(stream, columns, rows, cancellationToken), TableText.MediaType, ".csv", cancellationToken);

    private async Task<IActionResult> ExportAsync(
        Func<Stream, IReadOnlyList<TableColumn<SetAsideLine>>, IEnumerable<SetAsideLine>, Task> write, string type, string ending, CancellationToken cancellationToken)
    {
        var list = await db.OfferLists.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (list is null)
        {
            return NotFound();
        }

        var rows = await db.SetAsideRows.AsNoTracking().OfList(Id).Waiting().OrderBy(row => row.Sheet).ThenBy(row => row.RowNumber).ToListAsync(cancellationToken);
        var stream = new MemoryStream();
        await write(stream, SetAsideTable.Columns(OfferMapping.FromJson(list.Mapping)), rows.Select(SetAsideLine.Of));
        stream.Position = 0;
        return File(stream, type, Path.GetFileNameWithoutExtension(list.FileName) + " set aside" + ending);
    }
}
