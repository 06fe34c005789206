using System.Threading.Channels;
using GreenLedger.Data;
using GreenLedger.Data.Cupping;

namespace GreenLedger.Web.Cupping;

/// <summary>
/// The node's one writer of changes to sheets: what arrives while it is storing waits and is stored together in the next
/// transaction, so that a whole table costs no more commits than one cupper. A change is answered when it is stored.
/// </summary>
internal sealed class DraftWriter(IServiceScopeFactory scopes, TimeProvider clock, ILogger<DraftWriter> log) : BackgroundService
{
    /// <summary>Changes stored in one transaction; more would make the first of them wait.</summary>
    private const int AtOnce = 250;

    private readonly Channel<Waiting> _waiting = Channel.CreateBounded<Waiting>(20 * AtOnce);

    /// <summary>Stores a change and says what became of it.</summary>
    public async Task<DraftOutcome> SaveAsync(DraftSave save, CancellationToken cancellationToken)
    {
        var waiting = new Waiting(save, new TaskCompletionSource<DraftOutcome>(TaskCreationOptions.RunContinuationsAsynchronously));
        await _waiting.Writer.WriteAsync(waiting, cancellationToken);
        return await waiting.Outcome.Task.WaitAsync(cancellationToken);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (await _waiting.Reader.WaitToReadAsync(stoppingToken))
        {
            var batch = new List<Waiting>();
            while (batch.Count < AtOnce && _waiting.Reader.TryRead(out var one))
            {
                batch.Add(one);
            }

            await StoreAsync(batch, stoppingToken);
        }
    }

    private async Task StoreAsync(List<Waiting> batch, CancellationToken stoppingToken)
    {
        try
        {
            await using var scope = scopes.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<LedgerContext>();
            var outcomes = await db.SaveDraftsAsync([.. batch.Select(one => one.Save)], clock.GetUtcNow(), stoppingToken);
            foreach (var (one, outcome) in batch.Zip(outcomes))
            {
                one.Outcome.TrySetResult(outcome);
            }
        }
#pragma warning disable CA1031 // Whatever went wrong belongs to those who wait for it; the writer goes on with the next changes.
        catch (Exception failure)
#pragma warning restore CA1031
        {
            log.LogError(failure, "{Count} changes of sheets could not be stored; the phones keep them and send them again.", batch.Count);
            batch.ForEach(one => one.Outcome.TrySetException(failure));
        }
    }

    private sealed record Waiting(DraftSave Save, TaskCompletionSource<DraftOutcome> Outcome);
}
