using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>The house's own data behind contracts: standard forms, the markets' closing days and how their months are counted.</summary>
internal static class ContractHabitsApi
{
    public static void MapContractHabits(this RouteGroupBuilder contracts)
    {
        contracts.MapGet("/forms", FormsAsync).WithName("ListStandardForms").WithSummary("Standard forms that contracts refer to, those in use first.");
        contracts.MapPost("/forms", AddFormAsync).WithName("AddStandardForm").WithSummary("Adds a standard form.");
        contracts.MapPut("/forms/{id}", ChangeFormAsync).WithName("ChangeStandardForm").WithSummary("Changes a standard form; contracts keep the figures that stood when they were written.")
            .WithDescription("All of it is sent, with the version that was read; 409 when somebody was faster. `isInUse` false puts it away.");
        contracts.MapGet("/calendar", CalendarAsync).WithName("ReadMarketCalendar").WithSummary("How the days of the markets are counted, and their closing days from today on.");
        contracts.MapPut("/calendar", CountAsync).WithName("ChangeMarketCalendar").WithSummary("Changes how the days of the markets are counted.")
            .WithDescription("All of them are sent, with the version that was read; 409 when somebody was faster.");
        contracts.MapPost("/calendar/closing-days", CloseAsync).WithName("AddClosingDay").WithSummary("Adds a day on which a market is closed.");
        contracts.MapDelete("/calendar/closing-days/{id}", OpenAsync).WithName("RemoveClosingDay").WithSummary("Takes a closing day away.");
    }

    private static async Task<Ok<List<StandardFormReply>>> FormsAsync(LedgerContext db, CancellationToken cancellationToken) => TypedResults.Ok(
        (await db.StandardForms.AsNoTracking().OrderByDescending(form => form.IsInUse).ThenBy(form => form.Name).ThenBy(form => form.Edition).ToListAsync(cancellationToken)).ConvertAll(StandardFormReply.Of));

    private static async Task<Created<StandardFormReply>> AddFormAsync(StandardFormRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var form = new StandardForm(request.Name, request.Edition ?? "");
        db.Add(form);
        await SaveAsync(form, request, db, cancellationToken);
        return TypedResults.Created("/api/contracts/forms", StandardFormReply.Of(form));
    }

    private static async Task<Results<Ok<StandardFormReply>, NotFound>> ChangeFormAsync(Id<StandardForm> id, StandardFormRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.StandardForms.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } form)
        {
            return TypedResults.NotFound();
        }

        db.Entry(form).Property(one => one.Version).OriginalValue = request.Version;
        form.Call(request.Name, request.Edition);
        await SaveAsync(form, request, db, cancellationToken);
        return TypedResults.Ok(StandardFormReply.Of(form));
    }

    private static async Task SaveAsync(StandardForm form, StandardFormRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        request.Fill(form);
        await db.StandardForms.RequireOneEditionAsync(form, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
    }

    private static async Task<Ok<MarketCalendarReply>> CalendarAsync(LedgerContext db, HouseZone house, CancellationToken cancellationToken) =>
        TypedResults.Ok(await ReadAsync(db, house, cancellationToken));

    private static async Task<Ok<MarketCalendarReply>> CountAsync(MarketDays days, LedgerContext db, HouseZone house, CancellationToken cancellationToken)
    {
        var habits = await db.ToChangeAsync<FixingHabits>(days.Version, cancellationToken);
        habits.Count(days.ArabicaNoticeDays, days.RobustaNoticeDays, days.ArabicaTradingDays, days.RobustaTradingDays);
        habits.Keep(days.MarginDays, days.WarningDays);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(await ReadAsync(db, house, cancellationToken));
    }

    private static async Task<Created<ClosingDayReply>> CloseAsync(ClosingDayRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var day = new ExchangeHoliday(request.Market, request.On, request.Name);
        await db.ExchangeHolidays.RequireOpenAsync(day, cancellationToken);
        db.Add(day);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Created("/api/contracts/calendar", ClosingDayReply.Of(day));
    }

    private static async Task<Results<NoContent, NotFound>> OpenAsync(Id<ExchangeHoliday> id, LedgerContext db, CancellationToken cancellationToken)
    {
        if (await db.ExchangeHolidays.SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } day)
        {
            return TypedResults.NotFound();
        }

        db.Remove(day);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.NoContent();
    }

    private static async Task<MarketCalendarReply> ReadAsync(LedgerContext db, HouseZone house, CancellationToken cancellationToken)
    {
        var today = house.Today;
        var closed = await db.ExchangeHolidays.AsNoTracking().Where(day => day.On >= today).OrderBy(day => day.On).ThenBy(day => day.Market).ToListAsync(cancellationToken);
        return new MarketCalendarReply(MarketDays.Of(await db.FixingHabits.AsNoTracking().OfHouseAsync(cancellationToken)), closed.ConvertAll(ClosingDayReply.Of));
    }
}

/// <summary>A standard form with the figures that it brings to a draft.</summary>
/// <param name="Version">As it was read; for a new one of no meaning.</param>
internal sealed record StandardFormRequest(
    string Name,
    string? Edition = null,
    string? Arbitration = null,
    decimal FranchisePercent = 0m,
    decimal TolerancePercent = 0m,
    int? WeighWithinDays = null,
    int? QualityClaimDays = null,
    int? OtherClaimDays = null,
    bool QualityFromClearance = false,
    WeighingStart WeighFrom = WeighingStart.Discharge,
    bool IsInUse = true,
    int Version = 0)
{
    public void Fill(StandardForm form)
    {
        form.Allow(Percent.Of(FranchisePercent), Percent.Of(TolerancePercent));
        form.Give(WeighWithinDays, QualityClaimDays, OtherClaimDays, Arbitration, QualityFromClearance, WeighFrom);
        if (IsInUse)
        {
            form.TakeUp();
        }
        else
        {
            form.PutAway();
        }
    }
}

/// <summary>A standard form as it stands.</summary>
internal sealed record StandardFormReply(
    Guid Id,
    int Version,
    string Name,
    string Edition,
    string Arbitration,
    decimal FranchisePercent,
    decimal TolerancePercent,
    int? WeighWithinDays,
    int? QualityClaimDays,
    int? OtherClaimDays,
    bool QualityFromClearance,
    WeighingStart WeighFrom,
    bool IsInUse)
{
    public static StandardFormReply Of(StandardForm form) => new(
        form.Id.Value, form.Version, form.Name, form.Edition, form.Arbitration, form.Franchise.Points, form.Tolerance.Points,
        form.WeighWithinDays, form.QualityClaimDays, form.OtherClaimDays, form.QualityFromClearance, form.WeighFrom, form.IsInUse);
}

/// <summary>Business days before the month or its end, the margin in business days, the warning in calendar days.</summary>
internal sealed record MarketDays(int Version, int ArabicaNoticeDays, int RobustaNoticeDays, int ArabicaTradingDays, int RobustaTradingDays, int MarginDays, int WarningDays)
{
    public static MarketDays Of(FixingHabits habits) => new(
        habits.Version, habits.ArabicaNoticeDays, habits.RobustaNoticeDays, habits.ArabicaTradingDays, habits.RobustaTradingDays, habits.MarginDays, habits.WarningDays);
}

/// <summary>A day on which a market is closed.</summary>
internal sealed record ClosingDayRequest(FuturesMarket Market, DateOnly On, string Name);

/// <summary>A day on which a market is closed.</summary>
internal sealed record ClosingDayReply(Guid Id, FuturesMarket Market, DateOnly On, string Name)
{
    public static ClosingDayReply Of(ExchangeHoliday day) => new(day.Id.Value, day.Market, day.On, day.Name);
}

/// <summary>How the days of the markets are counted, and their closing days from today on.</summary>
internal sealed record MarketCalendarReply(MarketDays Days, IReadOnlyList<ClosingDayReply> ClosingDays);
