using GreenLedger.Data;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Measures;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>How the house judges arrivals where a contract says nothing else.</summary>
internal static class ArrivalHabitsApi
{
    public static void MapArrivalHabits(this RouteGroupBuilder arrivals)
    {
        arrivals.MapGet("/habits", ReadAsync).WithName("ReadArrivalHabits").WithSummary("The tolerance of the cup and the limits that hold where a contract names none");
        arrivals.MapPut("/habits", ChangeAsync).WithName("ChangeArrivalHabits").WithSummary("Changes how the house judges arrivals")
            .WithDescription("All of them are sent, with the version that was read; 409 when somebody was faster.");
    }

    private static async Task<Ok<ArrivalHabitsBody>> ReadAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(ArrivalHabitsBody.Of(await db.ArrivalHabits.AsNoTracking().OfHouseAsync(cancellationToken)));

    private static async Task<Ok<ArrivalHabitsBody>> ChangeAsync(ArrivalHabitsBody body, LedgerContext db, CancellationToken cancellationToken)
    {
        var habits = await db.ToChangeAsync<ArrivalHabits>(body.Version, cancellationToken);
        habits.Judge(Score.Of(body.TolerancePoints), body.BetweenSessionsPoints is { } between ? Score.Of(between) : null);
        habits.Limit(
            Percent.Of(body.LowestMoisturePercent),
            Percent.Of(body.HighestMoisturePercent),
            body.WaterActivityBelow is { } activity ? WaterActivity.Of(activity) : null,
            body.LeastOnStatedScreenPercent is { } share ? Percent.Of(share) : null);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(ArrivalHabitsBody.Of(habits));
    }
}

/// <summary>What the house asks of an arrival; null where it asks nothing.</summary>
/// <param name="BetweenSessionsPoints">One standard deviation between two sessions; null while the house does not know it.</param>
internal sealed record ArrivalHabitsBody(
    int Version,
    decimal TolerancePoints,
    decimal? BetweenSessionsPoints,
    decimal LowestMoisturePercent,
    decimal HighestMoisturePercent,
    decimal? WaterActivityBelow,
    decimal? LeastOnStatedScreenPercent)
{
    public static ArrivalHabitsBody Of(ArrivalHabits habits) => new(
        habits.Version,
        habits.Tolerance.Points,
        habits.BetweenSessions?.Points,
        habits.LowestMoisture.Points,
        habits.HighestMoisture.Points,
        habits.WaterActivityBelow?.Ratio,
        habits.LeastOnStatedScreen?.Points);
}
