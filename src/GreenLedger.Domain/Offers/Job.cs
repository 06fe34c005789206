using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Offers;

/// <summary>
/// A long piece of work that a page left to the nodes. One node takes it at a time and must say now and then that it is
/// still at it; when it falls silent another node begins the work anew, which is safe because the work is one transaction.
/// </summary>
public sealed class Job
{
    /// <summary>A node that has said nothing for this long has fallen away.</summary>
    public static readonly TimeSpan Silence = TimeSpan.FromMinutes(2);

    /// <summary>How many times a job is begun before it counts as failed.</summary>
    public const int MostTries = 3;

    private Job()
    {
        Kind = "";
        Order = "";
        Stage = "";
    }

    public Job(string kind, string order, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<Job>.New();
        Kind = Rule.Text(kind, "The kind of work", 80, nameof(Kind));
        Order = order;
        Stage = "Waiting for its turn";
        By = by;
        At = at;
    }

    public Id<Job> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>What is to be done: the name by which a node finds the worker for it.</summary>
    public string Kind { get; private set; }

    /// <summary>With what it is to be done, as JSON.</summary>
    public string Order { get; private set; }

    public JobState State { get; private set; }

    /// <summary>What it is doing, in words: "Reading rows".</summary>
    public string Stage { get; private set; }

    public int Done { get; private set; }

    /// <summary>Zero while it is not known.</summary>
    public int Total { get; private set; }

    public int Tries { get; private set; }

    /// <summary>The node that has it.</summary>
    public string? TakenBy { get; private set; }

    public DateTimeOffset? HeardAt { get; private set; }

    public DateTimeOffset? EndedAt { get; private set; }

    /// <summary>When done: where its outcome is shown. When failed: a sentence about why.</summary>
    public string? Outcome { get; private set; }

    /// <summary>What the work found, as JSON, where its outcome shows something that is stored nowhere else.</summary>
    public string? Found { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public bool IsEnded => State is JobState.Done or JobState.Failed;

    /// <summary>Whether a node may take it now: it waits, or the node that had it fell silent.</summary>
    public bool CanBeTaken(DateTimeOffset now) =>
        State == JobState.Waiting || (State == JobState.Running && HeardAt + Silence < now);

    public void Take(string node, DateTimeOffset now)
    {
        Rule.Require(CanBeTaken(now), "This work is in other hands.", nameof(State));
        if (Tries >= MostTries)
        {
            Fail("The work was begun several times and never came to an end: please try with a smaller list.", now);
            return;
        }

        State = JobState.Running;
        Tries++;
        TakenBy = node;
        HeardAt = now;
    }

    public void Report(string stage, int done, int total, DateTimeOffset now)
    {
        Stage = stage;
        Done = done;
        Total = total;
        HeardAt = now;
    }

    /// <summary>The node that had it goes away in good order: another may begin it anew at once.</summary>
    public void GiveBack()
    {
        State = JobState.Waiting;
        Stage = "Waiting for its turn";
        TakenBy = null;
        Tries--;
    }

    public void Finish(string outcome, DateTimeOffset now, string? found = null)
    {
        End(JobState.Done, outcome, now);
        Found = found;
    }

    public void Fail(string reason, DateTimeOffset now) => End(JobState.Failed, reason, now);

    private void End(JobState state, string outcome, DateTimeOffset now)
    {
        Rule.Require(!IsEnded, "This work has ended already.", nameof(State));
        State = state;
        Outcome = outcome;
        HeardAt = now;
        EndedAt = now;
    }
}
