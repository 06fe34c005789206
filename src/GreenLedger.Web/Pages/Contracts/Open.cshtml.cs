using GreenLedger.Data.Contracts;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Pricing;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Contracts;

/// <summary>What is open by month, with its dated tasks.</summary>
public sealed class OpenModel(FixingsQuery fixings, TimeProvider clock) : PageModel
{
    public IReadOnlyList<OpenMonth> Months { get; private set; } = [];

    public FuturesQuotes Quotes { get; private set; } = new([]);

    public DateOnly Today => clock.Today();

    public int WarningDays { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Months = await fixings.OpenAsync(Today, cancellationToken);
        Quotes = await fixings.QuotesAsync(Today, cancellationToken);
        WarningDays = (await fixings.CalendarAsync(cancellationToken)).Habits.WarningDays;
    }
}
