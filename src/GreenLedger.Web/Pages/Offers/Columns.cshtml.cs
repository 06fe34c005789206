using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Offers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Offers;

public sealed class ColumnsModel(ListLoading loading) : FormPage
{
    private ListLook? _look;

    [BindProperty]
    public ColumnsForm Input { get; set; } = new();

    [BindProperty(SupportsGet = true)]
    public Id<StoredFile> Id { get; set; }

    public ListOutcome? Outcome { get; private set; }

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

        var (outcome, stored) = await loading.StoreAsync(list, Input.ReceivedOn, User.Person(), cancellationToken);
        Say(stored
            ? $"Stored: {outcome.Accepted.Count} accepted, {outcome.Revised.Count} revised, {outcome.Unchanged.Count} unchanged, {outcome.SetAside.Count} set aside."
            : $"This list says nothing new: {outcome.Unchanged.Count} offers are unchanged and nothing was written.");
        return stored ? RedirectToPage("List", new { outcome.List.Id }) : RedirectToPage("Import");
    }

    public string SampleOf(string heading) => _look is not null && _look.Samples.TryGetValue(heading, out var cells)
        ? string.Join(" · ", cells.Where(cell => !cell.IsEmpty).Take(3).Select(cell => cell.Trimmed))
        : "";

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        if (_look is null && await loading.FindFileAsync(Id, cancellationToken) is { } file)
        {
            _look = ListLook.Of(Documents.Offers.OfferWorkbook.Read(file.Content!.Bytes), file.Name);
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
        return list;
    }
}
