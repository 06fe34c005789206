using GreenLedger.Data;

namespace GreenLedger.Web.Hosting;

/// <summary>Whether this node can answer, for a container's health check and a proxy: 200, or 503 without its database.</summary>
internal static class Health
{
    public static void MapHealth(this WebApplication app) =>
        app.MapGet("/health", AnswerAsync).AllowAnonymous().DisableHttpMetrics().ExcludeFromDescription();

    private static async Task<IResult> AnswerAsync(LedgerContext db, CancellationToken cancellationToken) =>
        await db.Database.CanConnectAsync(cancellationToken)
            ? Results.Text("healthy")
            : Results.Text("no database", statusCode: StatusCodes.Status503ServiceUnavailable);
}
