using GreenLedger.Data;
using GreenLedger.Domain.Trace;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>By what names coffee is told to others; all may be null.</summary>
internal sealed record ExchangeNamesRequest(string? WebAddress, string? CompanyPrefix, string? ItemReference, string? Gln = null);

/// <summary>The names in EPCIS events.</summary>
internal static class ExchangeNamesApi
{
    public static void MapNamesApi(this RouteGroupBuilder trace)
    {
        trace.MapGet("/names", FindAsync).WithName("FindExchangeNames").WithSummary("By what names coffee is told to others");
        trace.MapPut("/names", StateAsync).WithName("StateExchangeNames").WithSummary("States the web address, the GS1 company prefix with the item reference, the location number (GLN)");
    }

    private static async Task<Ok<ExchangeNamesRequest>> FindAsync(LedgerContext db, CancellationToken cancellationToken) =>
        TypedResults.Ok(Of(await db.ExchangeNames.AsNoTracking().OfHouseAsync(cancellationToken)));

    private static async Task<Ok<ExchangeNamesRequest>> StateAsync(ExchangeNamesRequest request, LedgerContext db, CancellationToken cancellationToken)
    {
        var names = await db.ExchangeNames.StatedAsync(cancellationToken) ?? db.Add(new ExchangeNames()).Entity;
        names.State(request.WebAddress, request.CompanyPrefix, request.ItemReference, request.Gln);
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.Ok(Of(names));
    }

    private static ExchangeNamesRequest Of(ExchangeNames names) => new(names.WebAddress, names.CompanyPrefix, names.ItemReference, names.Gln);
}
