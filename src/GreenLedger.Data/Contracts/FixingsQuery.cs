using GreenLedger.Data.Pricing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Contracts;

/// <summary>Reads what is open on contracts, with the markets' days and the newest quotes.</summary>
public sealed class FixingsQuery(LedgerContext db)
{
    public async Task<ExchangeCalendar> CalendarAsync(CancellationToken cancellationToken) => new(
        await db.ExchangeHolidays.AsNoTracking().ToListAsync(cancellationToken),
        await db.FixingHabits.AsNoTracking().OfHouseAsync(cancellationToken));

    /// <summary>What is open by month, the nearest month first.</summary>
    public async Task<IReadOnlyList<OpenMonth>> OpenAsync(DateOnly today, CancellationToken cancellationToken) => OpenMonth.Of(
        await db.Contracts.AsNoTracking().ToBeFixed().Whole().ToListAsync(cancellationToken), await CalendarAsync(cancellationToken), today);

    /// <summary>Fixings whose last sensible day is near or past, the most urgent first.</summary>
    public async Task<IReadOnlyList<FixingTask>> DueAsync(DateOnly today, CancellationToken cancellationToken)
    {
        var within = (await db.FixingHabits.AsNoTracking().OfHouseAsync(cancellationToken)).WarningDays;
        return [.. (await OpenAsync(today, cancellationToken)).SelectMany(month => month.Tasks).Where(task => task.DaysLeft <= within).OrderBy(task => task.Last)];
    }

    /// <summary>The newest quote of each month on or before a day.</summary>
    public async Task<FuturesQuotes> QuotesAsync(DateOnly on, CancellationToken cancellationToken) =>
        new(await db.FuturesQuotes.HoldingOn(on).AsNoTracking().ToListAsync(cancellationToken));
}
