using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using GreenLedger.Web.Stock;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Stock;

/// <summary>The year ahead of a purpose: cover by week, what is expected, and who could fill the gap.</summary>
public sealed class CoverModel(LedgerContext db, PurposeQuery query, FillingOriginsQuery origins, HouseZone house) : PageModel
{
    /// <summary>The first by name where none is asked for.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Purpose>? Id { get; set; }

    public IReadOnlyList<PurposeRow> Rows { get; private set; } = [];

    public PurposeRow? Row { get; private set; }

    public IReadOnlyList<WeekAhead> Weeks { get; private set; } = [];

    public ChartSpec? Chart { get; private set; }

    public IReadOnlyList<OriginYear> Calendar { get; private set; } = [];

    public StockHabits Habits { get; private set; } = new();

    public DateOnly Today { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        Today = house.Today;
        Habits = await db.StockHabits.OfHouseAsync(cancellationToken);
        Rows = await query.ListAsync(Today, cancellationToken);
        Row = Id is null ? (Rows.Count > 0 ? Rows[0] : null) : Rows.FirstOrDefault(row => row.Purpose.Id == Id);
        if (Row is not { } row)
        {
            return Id is null ? Page() : NotFound();
        }

        Weeks = row.Cover.Outlook(Today);
        Chart = PurposeText.Chart(row.Purpose.Name, Weeks, Habits.LeadDays);
        Calendar = HarvestCalendar.Of(await origins.ListAsync(row.Purpose, cancellationToken), Today, Habits);
        return Page();
    }
}
