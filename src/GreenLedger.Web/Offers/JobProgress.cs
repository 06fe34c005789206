using System.Collections.Concurrent;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;

namespace GreenLedger.Web.Offers;

/// <summary>How far a job is, at this moment.</summary>
internal sealed record Progress(string Stage, int Done, int Total);

/// <summary>
/// How far the jobs of this node are. SQLite lets nobody write while a list is stored, so the freshest figures are kept
/// here and reach the job's row as soon as they can.
/// </summary>
internal sealed class JobProgress
{
    private readonly ConcurrentDictionary<Id<Job>, Progress> _running = new();

    public void Report(Id<Job> job, string stage, int done, int total) => _running[job] = new Progress(stage, done, total);

    public void Forget(Id<Job> job) => _running.TryRemove(job, out _);

    /// <summary>This node's figures, else those of the row.</summary>
    public Progress Of(Job job) => _running.GetValueOrDefault(job.Id) ?? new Progress(job.Stage, job.Done, job.Total);

    public Progress? Find(Id<Job> job) => _running.GetValueOrDefault(job);
}
