using GreenLedger.Data.Contracts;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>What is open by month, with its dated tasks.</summary>
public sealed class OpenModel(FixingsQuery fixings, HouseZone house) : PageModel
{
    public IReadOnlyList<OpenMonth> Months { get; private set; } = [];

    public FuturesQuotes Quotes { get; private set; } = new([]);

    public DateOnly Today => house.Today;

    public int WarningDays { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Months = await fixings.OpenAsync(Today, cancellationToken);
        Quotes = await fixings.QuotesAsync(Today, cancellationToken);
        WarningDays = (await fixings.CalendarAsync(cancellationToken)).Habits.WarningDays;
    }
}
