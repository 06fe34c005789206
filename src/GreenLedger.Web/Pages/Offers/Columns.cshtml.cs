using GreenLedger.Data;
using GreenLedger.Documents.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Offers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Offers;

[RequestFormLimits(ValueCountLimit = 4096)]
public sealed class ColumnsModel(LedgerContext db, ListLoading loading) : FormPage
{
    private ListLook? _look;

    [BindProperty]
    public ColumnsForm Input { get; set; } = new();

    [BindProperty(SupportsGet = true)]
    public Id<StoredFile> Id { get; set; }

    public ListOutcome? Outcome { get; private set; }

    public bool IsLong { get; private set; }

    public async Task<IActionResult> OnGetAsync(string? supplier, CancellationToken cancellationToken)
    {
        if (await OpenAsync(supplier, null, cancellationToken) is not { } list)
        {
            return NotFound();
        }

        Input = ColumnsForm.Of(list.Mapping, list.Sender.Supplier.Name, loading.Today);
        return Page();
    }

    public async Task<IActionResult> OnPostPreviewAsync(CancellationToken cancellationToken)
    {
        if (await OpenAsync(Input.Supplier, Input.ToMapping(), cancellationToken) is not { } list)
        {
            return NotFound();
        }

        Outcome = await loading.PreviewAsync(list, Input.ReceivedOn, User.Person(), cancellationToken);
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
            var job = loading.Order(list, Input.Supplier, Input.ReceivedOn, User.Person());
            await db.SaveChangesAsync(cancellationToken);
            return RedirectToPage("Loading", new { job.Id });
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
