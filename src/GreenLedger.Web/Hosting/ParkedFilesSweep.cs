using GreenLedger.Data;
using GreenLedger.Data.Papers;

namespace GreenLedger.Web.Hosting;

/// <summary>Removes, once an hour, the files that were sent more than a day ago and that nothing followed.</summary>
internal sealed partial class ParkedFilesSweep(IServiceScopeFactory scopes, TimeProvider clock, ILogger<ParkedFilesSweep> log)
    : BackgroundService
{
    private static readonly TimeSpan Interval = TimeSpan.FromHours(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Interval, clock);
        do
        {
            await SweepAsync(stoppingToken);
        }
        while (await timer.WaitForNextTickAsync(stoppingToken));
    }

    private async Task SweepAsync(CancellationToken stoppingToken)
    {
        try
        {
            await using var scope = scopes.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<LedgerContext>();
            var swept = await ParkedFiles.SweepAsync(db, clock.GetUtcNow(), stoppingToken);
            if (swept > 0)
            {
                Swept(swept);
            }
        }
        catch (System.Data.Common.DbException away)
        {
            Away(away); // The database may be away for a while: the next hour tries again, the application stays up.
        }
    }

    [LoggerMessage(LogLevel.Information, "Removed {Count} files that were parked for more than a day.")]
    private partial void Swept(int count);

    [LoggerMessage(LogLevel.Warning, "Parked files could not be swept; the next hour tries again.")]
    private partial void Away(Exception away);
}
