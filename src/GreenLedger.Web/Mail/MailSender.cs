using GreenLedger.Data;
using GreenLedger.Data.Due;
using GreenLedger.Data.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Display;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Mail;

/// <summary>Sends what waits in the outbox, on every node: the row's version lets only one of them have a message.</summary>
internal sealed class MailSender(IServiceScopeFactory scopes, MailSettings settings, TimeProvider clock, ILogger<MailSender> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan AfterTrouble = TimeSpan.FromSeconds(30);

    private readonly string _node = $"{Environment.MachineName}-{Guid.NewGuid():N}";

    /// <summary>Takes and tries the message that waits longest; false when there is none.</summary>
    public async Task<bool> SendNextAsync(CancellationToken cancellationToken)
    {
        if (await TakeAsync(cancellationToken) is not { } message)
        {
            return false;
        }

        try
        {
            var (end, trouble) = await new MailTry(settings).SendAsync(message, () => ChangeAsync(message.Id, one => one.BeginText(_node, clock.GetUtcNow())), cancellationToken);
            await ChangeAsync(message.Id, one => End(one, end, trouble ?? ""));
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
            await ChangeAsync(message.Id, one => one.Postpone(_node, "The node that had it was stopped.", clock.GetUtcNow()));
        }
        catch (Exception lost) when (lost is DbUpdateConcurrencyException or RuleBrokenException)
        {
            // This node was away for so long that another one took the message: it is that one's now.
            log.LogWarning(lost, "The message {Message} was taken by another node.", message.Id);
        }

        return true;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (settings.CanSend && !stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (!await SendNextAsync(stoppingToken))
                {
                    await Task.Delay(Pause, stoppingToken);
                }
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception failure)
            {
                // The database may be away for a while: the sender must outlive that, or nothing is sent until a restart.
                log.LogError(failure, "A message could not be taken or its end not written down.");
                await Task.Delay(AfterTrouble, stoppingToken);
            }
        }
    }

    private async Task<Message?> TakeAsync(CancellationToken cancellationToken)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<LedgerContext>();
        var now = clock.GetUtcNow();
        if (await db.Messages.ToSend(now).FirstOrDefaultAsync(cancellationToken) is not { } message)
        {
            return null;
        }

        try
        {
            message.Take(_node, now);
            if (message.State == MessageState.Queued && !await StillHoldsAsync(scope.ServiceProvider, message, cancellationToken))
            {
                message.Drop(_node, "It was for an earlier day, or whoever wished for it ended that or left.", now);
            }

            await db.SaveChangesAsync(cancellationToken);
            return message.State == MessageState.Queued ? message : null;
        }
        catch (DbUpdateConcurrencyException)
        {
            // Another node was faster and has it.
            return null;
        }
    }

    /// <summary>What follows a person's wish is asked for again at each try: it may have waited long.</summary>
    private static async Task<bool> StillHoldsAsync(IServiceProvider services, Message message, CancellationToken cancellationToken)
    {
        if (message is { OwnerId: null, ForDay: null })
        {
            return true;
        }

        var db = services.GetRequiredService<LedgerContext>();
        var isWished = await db.DueMails.Wished().AnyAsync(mail => mail.OwnerId == message.OwnerId && db.People.Any(person => person.Id == mail.OwnerId && person.IsActive), cancellationToken);
        return message.StillHolds(services.GetRequiredService<HouseZone>().Today, isWished);
    }

    private void End(Message message, TryEnd end, string trouble)
    {
        var now = clock.GetUtcNow();
        switch (end)
        {
            case TryEnd.Sent: message.Arrive(_node, now); break;
            case TryEnd.NotNow: message.Postpone(_node, trouble, now); break;
            case TryEnd.Never: message.Fail(_node, trouble, now); break;
            default: message.LoseSight(trouble, now); break;
        }
    }

    /// <summary>Written whatever happens to the node: what is known of a message is never given up for a stop.</summary>
    private async Task ChangeAsync(Id<Message> id, Action<Message> change)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<LedgerContext>();
        change(await db.Messages.SingleAsync(one => one.Id == id, CancellationToken.None));
        await db.SaveChangesAsync(CancellationToken.None);
    }
}
