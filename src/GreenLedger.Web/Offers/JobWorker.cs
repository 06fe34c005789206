using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Offers;

/// <summary>
/// Takes waiting jobs one after another, on every node: the row's version lets only one of them have it.
/// </summary>
internal sealed class JobWorker(IServiceScopeFactory scopes, JobProgress progress, TimeProvider clock, ILogger<JobWorker> log) : BackgroundService
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan Heartbeat = TimeSpan.FromSeconds(10);

    private readonly string _node = $"{Environment.MachineName}-{Guid.NewGuid():N}";

    /// <summary>Takes and does the oldest job that can be taken; false when there is none.</summary>
    public async Task<bool> DoNextAsync(CancellationToken cancellationToken)
    {
        if (await TakeAsync(cancellationToken) is not { } job)
        {
            return false;
        }

        using var ended = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var heart = BeatAsync(job.Id, ended.Token);
        await EndAsync(job.Id, await OutcomeAsync(job, cancellationToken));
        await ended.CancelAsync();
        await heart;
        progress.Forget(job.Id);
        return true;
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (!await DoNextAsync(stoppingToken))
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
                // The database may be away for a while: the worker must outlive that, or no job is done until a restart.
                log.LogError(failure, "A job could not be taken or ended.");
                await Task.Delay(Heartbeat, stoppingToken);
            }
        }
    }

    private async Task<Job?> TakeAsync(CancellationToken cancellationToken)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<LedgerContext>();
        var now = clock.GetUtcNow();
        var silent = now - Job.Silence;
        var job = await db.Jobs.Where(one => one.State == JobState.Waiting || (one.State == JobState.Running && one.HeardAt < silent))
            .OrderBy(one => one.At).FirstOrDefaultAsync(cancellationToken);
        if (job is null)
        {
            return null;
        }

        try
        {
            job.Take(_node, now);
            await db.SaveChangesAsync(cancellationToken);
            return job.IsEnded ? null : job;
        }
        catch (DbUpdateConcurrencyException)
        {
            // Another node was faster and has it.
            return null;
        }
    }

    /// <summary>What to write into the job's row once the work is over.</summary>
    private async Task<Action<Job>> OutcomeAsync(Job job, CancellationToken cancellationToken)
    {
        try
        {
            await using var scope = scopes.CreateAsyncScope();
            scope.ServiceProvider.GetRequiredService<Who>().Is(job.By);
            var work = scope.ServiceProvider.GetServices<IWork>().Single(one => one.Kind == job.Kind);
            var (outcome, found) = await work.DoAsync(job, (stage, done, total) => progress.Report(job.Id, stage, done, total), cancellationToken);
            return ended => ended.Finish(outcome, clock.GetUtcNow(), found);
        }
        catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
        {
            return ended => ended.GiveBack();
        }
        catch (RuleBrokenException broken)
        {
            return ended => ended.Fail(broken.Message, clock.GetUtcNow());
        }
        catch (Exception failure)
        {
            // Whatever else goes wrong in one job must not end the worker; the person reads a sentence, the log the rest.
            log.LogError(failure, "The job {Job} ({Kind}) failed.", job.Id, job.Kind);
            return ended => ended.Fail("Something went wrong here and nothing was stored: try again, and tell your administrator if it stays.", clock.GetUtcNow());
        }
    }

    private async Task EndAsync(Id<Job> id, Action<Job> outcome)
    {
        await using var scope = scopes.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<LedgerContext>();
        var job = await db.Jobs.SingleAsync(one => one.Id == id, CancellationToken.None);
        if (job.TakenBy == _node && !job.IsEnded)
        {
            outcome(job);
            await db.SaveChangesAsync(CancellationToken.None);
        }
    }

    /// <summary>Says now and then that the job is in good hands, and how far it is.</summary>
    private async Task BeatAsync(Id<Job> id, CancellationToken cancellationToken)
    {
        while (!cancellationToken.IsCancellationRequested)
        {
            try
            {
                await Task.Delay(Heartbeat, cancellationToken);
                await using var scope = scopes.CreateAsyncScope();
                var now = clock.GetUtcNow();
                var (stage, done, total) = progress.Find(id) ?? new Progress("Working", 0, 0);
                await scope.ServiceProvider.GetRequiredService<LedgerContext>().Jobs
                    .Where(job => job.Id == id && job.TakenBy == _node && job.State == JobState.Running)
                    .ExecuteUpdateAsync(
                        set => set.SetProperty(job => job.HeardAt, now).SetProperty(job => job.Stage, stage)
                            .SetProperty(job => job.Done, done).SetProperty(job => job.Total, total),
                        cancellationToken);
            }
            catch (OperationCanceledException) when (cancellationToken.IsCancellationRequested)
            {
                return;
            }
            catch (System.Data.Common.DbException)
            {
                // SQLite lets nobody write while the list is stored: the next beat tells it.
            }
        }
    }
}
