using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Contracts;

/// <summary>What the buyer says of a pre-shipment sample.</summary>
public enum ApprovalVerdict
{
    Approved = 0,

    /// <summary>Approved, and the seller is told what was noticed.</summary>
    ApprovedWithRemarks = 1,
    Refused = 2,
}

public static class ApprovalVerdicts
{
    public static string Word(this ApprovalVerdict verdict) => verdict switch
    {
        ApprovalVerdict.Approved => "approved",
        ApprovalVerdict.ApprovedWithRemarks => "approved with remarks",
        ApprovalVerdict.Refused => "refused",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict)),
    };
}

/// <summary>
/// A pre-shipment sample of a lot, approved or refused. A replacement sample is the next round of its lot. Without such a
/// record nothing counts as approved.
/// </summary>
public sealed class SampleApproval
{
    private SampleApproval()
    {
    }

    internal SampleApproval(int round, Sample sample, ApprovalVerdict verdict, string? remarks, DateOnly on, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<SampleApproval>.New();
        LotId = sample.LotId;
        SampleId = sample.Id;
        Round = round;
        Verdict = verdict;
        Remarks = remarks;
        On = on;
        By = by;
        At = at;
    }

    public Id<SampleApproval> Id { get; private set; }

    public Id<Lot> LotId { get; private set; }

    public Id<Sample> SampleId { get; private set; }

    /// <summary>1 for the first sample of the lot, then one more for each replacement.</summary>
    public int Round { get; private set; }

    public ApprovalVerdict Verdict { get; private set; }

    /// <summary>What was noticed, or why it was refused.</summary>
    public string? Remarks { get; private set; }

    public DateOnly On { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public bool IsApproval => Verdict != ApprovalVerdict.Refused;
}
