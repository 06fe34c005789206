using GreenLedger.Data;
using GreenLedger.Data.Roasting;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Settings;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>The settings of the house and of the sample room, as their pages have them.</summary>
internal static class SettingsApi
{
    public static void MapSettingsApi(this IEndpointRouteBuilder api)
    {
        var settings = api.MapGroup("/settings").WithTags("Settings");
        settings.MapGet("/house", HouseAsync).WithName("ReadHouseSettings").WithSummary("Name, currency and time zone of the house, how weights are shown, and what it expects of a panel");
        settings.MapPut("/house", ChangeHouseAsync).WithName("ChangeHouseSettings").WithSummary("Changes the general settings of the house")
            .WithDescription("All of them are sent, with the version that was read; 409 when somebody was faster.");
        settings.MapGet("/sample-room", SampleRoomAsync).WithName("ReadSampleRoomSettings").WithSummary("How long samples may stand, the windows of the roast protocol, and how is graded");
        settings.MapPut("/sample-room", ChangeAsync).WithName("ChangeSampleRoomSettings").WithSummary("Change the settings of the sample room")
            .WithDescription("All of them are sent, with the version that was read; 409 when somebody was faster. Roasts written down before keep the windows of their time.");
    }

    private static async Task<Ok<HouseSettings>> HouseAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(HouseSettings.Of(await db.Houses.AsNoTracking().SingleAsync(cancellationToken)));

    private static async Task<Ok<HouseSettings>> ChangeHouseAsync(HouseSettings settings, LedgerContext db, CancellationToken cancellationToken)
    {
        var house = await db.Houses.SingleAsync(cancellationToken);
        db.Entry(house).Property(one => one.Version).OriginalValue = settings.Version;
        settings.State(house);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(HouseSettings.Of(house));
    }

    private static async Task<Ok<SampleRoomSettings>> SampleRoomAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(await ReadAsync(db, cancellationToken));

    private static async Task<Ok<SampleRoomSettings>> ChangeAsync(SampleRoomSettings settings, LedgerContext db, TimeProvider clock, CancellationToken cancellationToken)
    {
        await db.StateAsync(settings.Version, settings.Days(), new GradingChoice(settings.Fractions, settings.MoistureMethod), settings.Windows(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(await ReadAsync(db, cancellationToken));
    }

    private static async Task<SampleRoomSettings> ReadAsync(LedgerContext db, CancellationToken cancellationToken) => SampleRoomSettings.Of(
        await db.SampleHabits.AsNoTracking().OfHouseAsync(cancellationToken),
        (await db.RoastProtocols.AsNoTracking().NewestAsync(cancellationToken))?.Windows ?? RoastWindows.Usual,
        await db.GradingHabits.AsNoTracking().OfHouseAsync(cancellationToken));
}

/// <summary>The general settings of the house.</summary>
/// <param name="Currency">Of landed cost, shortlists and summaries, by ISO 4217.</param>
/// <param name="TimeZone">Whose clocks the house reads, by its IANA name.</param>
/// <param name="ReproducibilityPoints">Between cuppers on the same coffee, one standard deviation.</param>
/// <param name="RepeatabilityPoints">One cupper on the same coffee twice, one standard deviation.</param>
/// <param name="LongYears">Currencies whose interest year has 365 days, with spaces between.</param>
internal sealed record HouseSettings(
    int Version, string Name, string Currency, string TimeZone, bool ShowsPounds, decimal ReproducibilityPoints, decimal RepeatabilityPoints, string LongYears)
{
    public static HouseSettings Of(House house) => new(
        house.Version, house.Name, house.Currency.Code, house.TimeZone, house.ShowsPounds, house.Reproducibility.Points, house.Repeatability.Points, house.LongYears);

    public void State(House house)
    {
        house.Rename(Name);
        house.UseCurrency(Domain.Measures.Currency.Of(Currency));
        house.ReadClocksIn(TimeZone);
        house.ShowWeightsIn(ShowsPounds);
        house.Expect(Score.Of(ReproducibilityPoints), Score.Of(RepeatabilityPoints));
        house.CountInterestIn365DaysFor(LongYears);
    }
}

/// <summary>Days that a sample may stand at a step (null: no limit), the windows of the protocol, and how is graded.</summary>
internal sealed record SampleRoomSettings(
    int Version,
    int? AskedDays,
    int? OnTheWayDays,
    int? ReceivedDays,
    int? GradedDays,
    int? RoastedDays,
    int? CuppedDays,
    string Protocol,
    decimal LeastMinutes,
    decimal MostMinutes,
    decimal LeastRestHours,
    decimal MostRestHours,
    string? ColourScale,
    decimal? WholeBean,
    decimal? Ground,
    decimal ColourTolerance,
    DefectFractions Fractions,
    string? MoistureMethod)
{
    public static SampleRoomSettings Of(SampleHabits habits, RoastWindows windows, GradingHabits grading) => new(
        habits.Version, habits.AskedDays, habits.OnTheWayDays, habits.ReceivedDays, habits.GradedDays, habits.RoastedDays, habits.CuppedDays,
        windows.Name, windows.LeastMinutes, windows.MostMinutes, windows.LeastRestHours, windows.MostRestHours,
        windows.ColourScale, windows.WholeBean?.Value, windows.Ground?.Value, windows.ColourTolerance, grading.Fractions, grading.MoistureMethod);

    public StandingDays Days() => new(AskedDays, OnTheWayDays, ReceivedDays, GradedDays, RoastedDays, CuppedDays);

    public RoastWindows Windows() => new(
        Protocol, LeastMinutes, MostMinutes, LeastRestHours, MostRestHours, ColourScale,
        WholeBean is { } whole ? ColourReading.Of(whole) : null, Ground is { } ground ? ColourReading.Of(ground) : null, ColourTolerance);
}
