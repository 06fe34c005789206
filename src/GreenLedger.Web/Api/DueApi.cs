using GreenLedger.Data.Due;
using GreenLedger.Domain.Due;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;

namespace GreenLedger.Web.Api;

/// <summary>What is due, for scripts.</summary>
internal static class DueApi
{
    public static void MapDueApi(this IEndpointRouteBuilder api) => api.MapGroup("/due").WithTags("Due")
        .MapGet("", ListAsync).WithName("ListDue").WithSummary("What is due in the areas that your roles may read, the soonest first.");

    /// <param name="kind">Only lines of this kind.</param>
    /// <param name="withinDays">Only what is due within so many days, or late.</param>
    private static async Task<Ok<List<DueReply>>> ListAsync(
        DueQuery query, Reader reader, HouseZone house, CancellationToken cancellationToken, DueKind? kind = null, int? withinDays = null)
    {
        var today = house.Today;
        var lines = await query.ListAsync(reader.MayRead, await reader.SealAsync(), today, cancellationToken);
        return TypedResults.Ok(lines.Where(line => (kind is null || line.Kind == kind) && (withinDays is not { } days || line.DaysLeft(today) <= days)).Select(line => DueReply.Of(line, today)).ToList());
    }

    /// <param name="DaysLeft">Calendar days; below zero once the day is past.</param>
    internal sealed record DueReply(string Key, DueKind Kind, Guid RecordId, string What, string By, DateOnly On, int DaysLeft)
    {
        public static DueReply Of(DueLine line, DateOnly today) => new(line.Key, line.Kind, line.RecordId, line.What, line.By, line.On, line.DaysLeft(today));
    }
}
