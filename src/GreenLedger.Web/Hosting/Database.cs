using GreenLedger.Data;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace GreenLedger.Web.Hosting;

/// <summary>The ledger's database, and the keys of cookies and forms in it, so that every node can read them.</summary>
internal static class Database
{
    public static WebApplicationBuilder UseLedger(this WebApplicationBuilder builder)
    {
        builder.Services.AddLedger(builder.Configuration);
        builder.Services.AddDataProtection().SetApplicationName("GreenLedger").PersistKeysToDbContext<LedgerContext>();
        builder.Services.TryAddSingleton(TimeProvider.System);
        return builder;
    }

    public static async Task PrepareDatabaseAsync(this WebApplication app)
    {
        await using var scope = app.Services.CreateAsyncScope();
        await LedgerDatabase.PrepareAsync(scope.ServiceProvider.GetRequiredService<LedgerContext>());
    }
}
