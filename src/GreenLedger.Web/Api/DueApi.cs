using GreenLedger.Data;
using GreenLedger.Data.Due;
using GreenLedger.Domain.Due;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What is due, for scripts.</summary>
internal static class DueApi
{
    public static void MapDueApi(this IEndpointRouteBuilder api)
    {
        var due = api.MapGroup("/due").WithTags("Due");
        due.MapGet("", ListAsync).WithName("ListDue").WithSummary("What is due in the areas that your roles may read, the soonest first.");
        due.MapGet("/habits", HabitsAsync).WithName("ReadDueHabits").WithSummary("The days that the house allows where no contract dates anything, and the hour of the daily mails.");
        due.MapPut("/habits", AllowAsync).WithName("ChangeDueHabits").WithSummary("Changes the days that the house allows.")
            .WithDescription("All of them are sent, with the version that was read; 409 when somebody was faster.");
    }

    /// <param name="kind">Only lines of this kind.</param>
    /// <param name="withinDays">Only what is due within so many days, or late.</param>
    private static async Task<Ok<List<DueReply>>> ListAsync(
        DueQuery query, Reader reader, HouseZone house, CancellationToken cancellationToken, DueKind? kind = null, int? withinDays = null)
    {
        var today = house.Today;
        var lines = await query.ListAsync(reader.MayRead, await reader.SealAsync(), today, cancellationToken);
        return TypedResults.Ok(lines.Where(line => (kind is null || line.Kind == kind) && (withinDays is not { } days || line.DaysLeft(today) <= days)).Select(line => DueReply.Of(line, today)).ToList());
    }

    private static async Task<Ok<DueHabitsBody>> HabitsAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(DueHabitsBody.Of(await db.DueHabits.AsNoTracking().OfHouseAsync(cancellationToken)));

    private static async Task<Ok<DueHabitsBody>> AllowAsync(DueHabitsBody body, LedgerContext db, CancellationToken cancellationToken)
    {
        var habits = await db.ToChangeAsync<DueHabits>(body.Version, cancellationToken);
        habits.Allow(body.DocumentDays, body.ReceiptDays, body.CuppingDays, body.NoticeDays);
        habits.MailFrom(body.MailHour);
        habits.Show(body.PastDays ?? habits.PastDays, body.ApprovalDays ?? habits.ApprovalDays);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(DueHabitsBody.Of(habits));
    }

    /// <summary>Calendar days from the event that starts them, and the hour of the house's clock for the daily mails; days that are left out stay.</summary>
    internal sealed record DueHabitsBody(int Version, int DocumentDays, int ReceiptDays, int CuppingDays, int NoticeDays, int MailHour, int? PastDays = null, int? ApprovalDays = null)
    {
        public static DueHabitsBody Of(DueHabits habits) => new(habits.Version, habits.DocumentDays, habits.ReceiptDays, habits.CuppingDays, habits.NoticeDays, habits.MailHour, habits.PastDays, habits.ApprovalDays);
    }

    /// <param name="DaysLeft">Calendar days; below zero once the day is past.</param>
    internal sealed record DueReply(string Key, DueKind Kind, Guid RecordId, string What, string By, DateOnly On, int DaysLeft)
    {
        public static DueReply Of(DueLine line, DateOnly today) => new(line.Key, line.Kind, line.RecordId, line.What, line.By, line.On, line.DaysLeft(today));
    }
}
