using GreenLedger.Domain;
using GreenLedger.Domain.Due;
using GreenLedger.Web.Mail;

namespace GreenLedger.Web.Due;

/// <summary>Looks now and then whether a daily mail is to be written, on every node.</summary>
internal sealed class DueMailClock(IServiceScopeFactory scopes, MailSettings settings, ILogger<DueMailClock> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromMinutes(1);

    /// <summary>Writes what is lacking now.</summary>
    public async Task LookAsync(CancellationToken cancellationToken)
    {
        foreach (var id in await LackingAsync(cancellationToken))
        {
            try
            {
                await using var scope = scopes.CreateAsyncScope();
                await scope.ServiceProvider.GetRequiredService<DueMailing>().WriteAsync(id, cancellationToken);
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                // One person's mail that cannot be written must not keep the others from theirs; it is tried again in a minute.
                log.LogError(failure, "The daily mail {Mail} could not be written.", id);
            }
        }
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (settings.CanSend && !stoppingToken.IsCancellationRequested)
        {
            try
            {
                await Task.Delay(Pause, stoppingToken);
                await LookAsync(stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception failure)
            {
                // The database may be away for a while: this must outlive that, or no mail is written until a restart.
                log.LogError(failure, "Whether a daily mail is lacking could not be looked up.");
            }
        }
    }

    private async Task<IReadOnlyList<Id<DueMail>>> LackingAsync(CancellationToken cancellationToken)
    {
        await using var scope = scopes.CreateAsyncScope();
        return await scope.ServiceProvider.GetRequiredService<DueMailing>().LackingAsync(cancellationToken);
    }
}
