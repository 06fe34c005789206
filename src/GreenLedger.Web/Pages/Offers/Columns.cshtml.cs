using GreenLedger.Data;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Offers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

[RequestFormLimits(ValueCountLimit = 4096)]
public sealed class ColumnsModel(LedgerContext db, ListLoading loading) : FormPage
{
    private ListLook? _look;

    [BindProperty]
    public ColumnsForm Input { get; set; } = new();

    [BindProperty(SupportsGet = true)]
    public Id<StoredFile> Id { get; set; }

    public ListPreview? Outcome { get; private set; }

    public bool IsLong { get; private set; }

    /// <summary>The columns as proposed, or as they stood when a node looked at the list, with what it found.</summary>
    public async Task<IActionResult> OnGetAsync(string? supplier, Id<Job>? preview, CancellationToken cancellationToken)
    {
        var looked = preview is { } id ? await FindPreviewAsync(id, cancellationToken) : null;
        if ((preview is not null && looked is null) || await OpenAsync(looked?.Order.Supplier ?? supplier, looked?.Order.Columns, cancellationToken) is not { } list)
        {
            return NotFound();
        }

        Outcome = looked?.Found;
        Input = ColumnsForm.Of(list.Mapping, looked?.Order.Supplier ?? list.Sender.Supplier.Name, looked?.Order.ReceivedOn ?? loading.Today);
        return Page();
    }

    public async Task<IActionResult> OnPostPreviewAsync(CancellationToken cancellationToken)
    {
        if (await OpenAsync(Input.Supplier, Input.ToMapping(), cancellationToken) is not { } list)
        {
            return NotFound();
        }

        if (list.IsLong)
        {
            return await OrderAsync(list, PreviewWork.Preview, cancellationToken);
        }

        Outcome = ListPreview.Of(await loading.PreviewAsync(list, Input.ReceivedOn, User.Person(), cancellationToken));
        return Page();
    }

    public async Task<IActionResult> OnPostStoreAsync(CancellationToken cancellationToken)
    {
        if (await OpenAsync(Input.Supplier, Input.ToMapping(), cancellationToken) is not { } list)
        {
            return NotFound();
        }

        if (list.IsLong)
        {
            return await OrderAsync(list, ListWork.Load, cancellationToken);
        }

        var (outcome, stored) = await loading.StoreAsync(list, Input.ReceivedOn, User.Person(), cancellationToken);
        if (stored)
        {
            Say($"Stored: {outcome.List.Accepted} accepted, {outcome.List.Revised} revised, {outcome.List.Unchanged} unchanged, {outcome.List.SetAsideCount} set aside.");
            return RedirectToPage("List", new { outcome.List.Id });
        }

        return RedirectToPage("List", new { Id = await loading.FindLoadedAsync(list, cancellationToken), NothingNew = true });
    }

    public string SampleOf(string heading) => _look is not null && _look.Samples.TryGetValue(heading, out var cells)
        ? string.Join(" · ", cells.Where(cell => !cell.IsEmpty).Take(3).Select(cell => cell.Trimmed))
        : "";

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        if (_look is null && await loading.FindFileAsync(Id, cancellationToken) is { } file)
        {
            var head = OfferWorkbook.Head(file.Content!.Bytes);
            _look = ListLook.Of(head.Lines, file.Name);
            IsLong = head.Rows > OpenedList.MostAtOnce;
        }
    }

    private async Task<IActionResult> OrderAsync(OpenedList list, string kind, CancellationToken cancellationToken)
    {
        var job = loading.Order(list, Input.Supplier, Input.ReceivedOn, User.Person(), kind);
        await db.SaveChangesAsync(cancellationToken);
        return RedirectToPage("Loading", new { job.Id });
    }

    /// <summary>What a node that looked at this file was told, and what it found.</summary>
    private async Task<(ListOrder Order, ListPreview Found)?> FindPreviewAsync(Id<Job> preview, CancellationToken cancellationToken)
    {
        var job = await db.Jobs.AsNoTracking().SingleOrDefaultAsync(one => one.Id == preview && one.Kind == PreviewWork.Preview && one.Found != null, cancellationToken);
        return job is not null && ListOrder.FromJson(job.Order) is { } order && order.FileId == Id.Value ? (order, ListPreview.FromJson(job.Found!)) : null;
    }

    private async Task<OpenedList?> OpenAsync(string? supplier, OfferMapping? mapping, CancellationToken cancellationToken)
    {
        if (await loading.FindFileAsync(Id, cancellationToken) is not { } file)
        {
            return null;
        }

        var list = await loading.OpenAsync(file, supplier, mapping, cancellationToken);
        _look = list.Look;
        IsLong = list.IsLong;
        return list;
    }
}
