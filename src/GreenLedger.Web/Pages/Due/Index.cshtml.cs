using GreenLedger.Data.Due;
using GreenLedger.Domain.Due;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Due;

/// <summary>What is due over all rooms that the reader may open, the soonest first.</summary>
internal sealed class IndexModel(DueQuery query, Reader reader, HouseZone house) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public DueKind? Kind { get; set; }

    /// <summary>Days ahead; 0 shows what is late or due today.</summary>
    [BindProperty(SupportsGet = true)]
    public int? Within { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public IReadOnlyList<DueLine> Lines { get; private set; } = [];

    /// <summary>Kinds that there are lines of.</summary>
    public IReadOnlyList<DueKind> Kinds { get; private set; } = [];

    /// <summary>Before the filter.</summary>
    public int Total { get; private set; }

    public DateOnly Today => house.Today;

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var all = await query.ListAsync(reader.MayRead, await reader.SealAsync(), Today, cancellationToken);
        var found = all.Where(line => (Kind is null || line.Kind == Kind) && (Within is not { } days || line.DaysLeft(Today) <= days)).ToList();
        (Total, Kinds) = (all.Count, [.. all.Select(line => line.Kind).Distinct().Order()]);
        Paging = Paging.Of(PageNumber, found.Count, "thing due", "things due");
        Lines = [.. found.Skip(Paging.Skip).Take(Paging.Size)];
    }
}
