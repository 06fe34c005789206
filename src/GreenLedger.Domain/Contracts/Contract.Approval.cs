using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Contracts;

/// <summary>Approval of pre-shipment samples, lot by lot and round by round.</summary>
public sealed partial class Contract
{
    private readonly List<SampleApproval> _approvals = [];

    /// <summary>In the order they were given.</summary>
    public IReadOnlyList<SampleApproval> Approvals => _approvals;

    /// <summary>Approves or refuses a pre-shipment sample of one of the lots.</summary>
    /// <exception cref="RuleBrokenException">
    /// Nothing waits for approval, the sample is none of these lots' or is judged already, or a refusal has no reasons.
    /// </exception>
    public void Judge(Sample sample, ApprovalVerdict verdict, string? remarks, DateOnly on, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(sample);
        Rule.Require(Enum.IsDefined(verdict), "Approve the sample, approve it with remarks, or refuse it.", nameof(SampleApproval.Verdict));
        Rule.Require(AwaitsApproval, $"The goods of this contract are “{Goods.Word()}”: no sample waits for approval.", "SampleId");
        Rule.Require(sample.Kind == SampleKind.PreShipment && sample.IsReceived, $"Sample {sample.LabelCode} is no pre-shipment sample that is here.", "SampleId");
        Rule.Require(_lots.Exists(lot => lot.LotId == sample.LotId), $"Sample {sample.LabelCode} is of no lot of this contract.", "SampleId");
        Rule.Require(_approvals.TrueForAll(one => one.SampleId != sample.Id), $"Sample {sample.LabelCode} is judged already: what was said of it stays. A replacement sample starts the next round.", "SampleId");
        Rule.Require(!IsApproved(sample.LotId), "This lot is approved already: a lot is approved once.", "SampleId");
        Rule.Require(on >= sample.ReceivedOn, $"Sample {sample.LabelCode} came on {Day(sample.ReceivedOn)}: it cannot have been judged before.", "On");
        RequireDay(on, at);
        var words = verdict == ApprovalVerdict.Approved
            ? Rule.OptionalText(remarks, "The remarks", 1000, nameof(SampleApproval.Remarks))
            : Rule.Text(remarks, verdict == ApprovalVerdict.Refused ? "The reasons for refusing" : "The remarks", 1000, nameof(SampleApproval.Remarks));
        _approvals.Add(new SampleApproval(RoundsOf(sample.LotId) + 1, sample, verdict, words, on, by, at));
        Go(verdict == ApprovalVerdict.Refused ? GoodsMove.Refuse : GoodsMove.Approve, on, words, by, at);
        Restate();
    }

    /// <summary>Whether a pre-shipment sample may be approved or refused: a part that shipped leaves the others waiting.</summary>
    public bool AwaitsApproval => Goods == GoodsState.AwaitingApproval || (Goods == GoodsState.PartShipped && Terms.Approval.IsAsked() && !IsApprovedInFull);

    /// <summary>Whether a lot has an approval on record.</summary>
    public bool IsApproved(Id<Lot> lot) => _approvals.Exists(one => one.LotId == lot && one.IsApproval);

    /// <summary>How many samples of a lot were judged so far.</summary>
    public int RoundsOf(Id<Lot> lot) => _approvals.Count(one => one.LotId == lot);

    /// <summary>The refused sample of the round before; null in the first round.</summary>
    public SampleApproval? Replaced(SampleApproval approval)
    {
        ArgumentNullException.ThrowIfNull(approval);
        return _approvals.Find(one => one.LotId == approval.LotId && one.Round == approval.Round - 1);
    }

    /// <summary>The refused sample that a pre-shipment sample replaces, judged or not yet; null where it replaces none.</summary>
    public SampleApproval? Replaced(Sample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        return _approvals.Find(one => one.SampleId == sample.Id) is { } judged ? Replaced(judged)
            : sample.Kind == SampleKind.PreShipment && IsOpen && _approvals.FindLast(one => one.LotId == sample.LotId) is { IsApproval: false } refused ? refused
            : null;
    }

    /// <summary>What was said of the sample that replaced a refused one; null where none was judged.</summary>
    public SampleApproval? Replacement(Id<Sample> refused) =>
        _approvals.Find(one => one.SampleId == refused) is { } judged ? _approvals.Find(one => one.LotId == judged.LotId && one.Round == judged.Round + 1) : null;

    private bool IsApprovedInFull => _lots.TrueForAll(lot => IsApproved(lot.LotId));

    /// <summary>No approval, no sale; or the last sample that may be sent of a lot was refused.</summary>
    private bool RefusalCancels => Terms.Approval.Rule == ApprovalRule.Cancel
        || (Terms.Approval is { Rule: ApprovalRule.Replace, MostSamples: { } most } && _lots.Exists(lot => !IsApproved(lot.LotId) && RoundsOf(lot.LotId) >= most));
}
