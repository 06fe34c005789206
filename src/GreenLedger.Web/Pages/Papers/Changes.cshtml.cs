using GreenLedger.Data;
using GreenLedger.Data.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Papers;

/// <summary>The whole history of the ledger.</summary>
[InArea("All changes")]
internal sealed class ChangesModel(LedgerContext db, HistoryQuery history, Reader reader) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Person>? By { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Kind { get; set; }

    [BindProperty(SupportsGet = true)]
    public DateOnly? From { get; set; }

    [BindProperty(SupportsGet = true)]
    public DateOnly? To { get; set; }

    public IReadOnlyList<HistoryRow> Rows { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<SelectListItem> People { get; private set; } = [];

    public IReadOnlyList<SelectListItem> Kinds { get; private set; } = [];

    public async Task OnGetAsync([FromQuery(Name = "pageNumber")] int pageNumber, CancellationToken cancellationToken)
    {
        var filter = new HistoryFilter(By, string.IsNullOrEmpty(Kind) ? null : Kind, From, To);
        Paging = Paging.Of(pageNumber, await history.CountAsync(filter, cancellationToken), "change", "changes");
        Rows = await history.ListAsync(filter, Paging.Skip, Paging.Size, reader.MayRead, await reader.SealAsync(), cancellationToken);
        People = [.. (await db.People.AsNoTracking().OrderBy(person => person.Name).ToListAsync(cancellationToken))
            .Select(person => new SelectListItem(person.Name, person.Id.ToString(), person.Id == By))];
        Kinds = [.. RecordKinds.All(db.Model).Select(kind => new SelectListItem(ValueWords.Heading(RecordKinds.Words(kind)), kind, kind == Kind))];
    }
}
