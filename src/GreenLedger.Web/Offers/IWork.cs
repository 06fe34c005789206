using GreenLedger.Domain.Offers;

namespace GreenLedger.Web.Offers;

/// <summary>The address where the outcome is shown, and what it shows where that is stored nowhere else.</summary>
internal sealed record WorkDone(string Address, string? Found = null);

/// <summary>A kind of long work that a node can do for a job.</summary>
internal interface IWork
{
    /// <summary>The jobs' kind that this does.</summary>
    string Kind { get; }

    /// <summary>
    /// Does the work in one transaction, so that it can be begun anew, and gives the address where its outcome is shown.
    /// </summary>
    Task<WorkDone> DoAsync(Job job, Action<string, int, int> report, CancellationToken cancellationToken);
}
