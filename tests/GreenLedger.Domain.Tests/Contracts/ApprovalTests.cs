using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Domain.Tests.Contracts;

/// <summary>Terms of approval: handbook, trade 4.3.</summary>
public sealed class ApprovalTests
{
    [Fact] // handbook, trade 12 no. 41: replace, at most 3, first refusal: round 2
    public void A_refusal_with_replacement_starts_the_next_round_of_the_lot()
    {
        var contract = Waiting(ApprovalRule.Replace, 3);

        Judge(contract, Sample(), ApprovalVerdict.Refused, "Phenolic in two cups of five.");
        Judge(contract, Sample(), ApprovalVerdict.ApprovedWithRemarks, "Moisture at the limit.");

        Assert.Equal([(1, false), (2, true)], contract.Approvals.Select(one => (one.Round, one.IsApproval)));
        Assert.Equal(GoodsState.ReadyToShip, contract.Goods);
    }

    [Fact]
    public void A_replacement_names_the_refused_sample_judged_or_not()
    {
        var contract = Waiting(ApprovalRule.Replace, 3);
        var (first, second) = (Sample(), Sample());
        Assert.Null(contract.Replaced(first));

        Judge(contract, first, ApprovalVerdict.Refused, "Phenolic in two cups of five.");
        Assert.Equal(first.Id, contract.Replaced(second)!.SampleId);
        Judge(contract, second, ApprovalVerdict.Approved, null);

        Assert.Null(contract.Replaced(contract.Approvals[0]));
        Assert.Equal(first.Id, contract.Replaced(contract.Approvals[1])!.SampleId);
        Assert.Equal(second.Id, contract.Replacement(first.Id)!.SampleId);
        Assert.Null(contract.Replaced(Sample()));
    }

    [Fact] // handbook, trade 12 no. 41: no approval, no sale: cancelled
    public void No_approval_no_sale_cancels_at_the_first_refusal()
    {
        var contract = Waiting(ApprovalRule.Cancel, null);

        Judge(contract, Sample(), ApprovalVerdict.Refused, "Not the coffee of the offer sample.");

        Assert.Equal(GoodsState.Cancelled, contract.Goods);
    }

    [Fact] // handbook, trade 4.3: next round until the agreed number, then cancelled
    public void The_last_sample_that_may_be_sent_refused_cancels()
    {
        var contract = Waiting(ApprovalRule.Replace, 2);

        Judge(contract, Sample(), ApprovalVerdict.Refused, "Stale.");
        Assert.Equal(GoodsState.AwaitingApproval, contract.Goods);
        Judge(contract, Sample(), ApprovalVerdict.Refused, "Stale again.");

        Assert.Equal(GoodsState.Cancelled, contract.Goods);
    }

    [Fact]
    public void Approving_twice_is_refused_and_changes_nothing()
    {
        var contract = Waiting(ApprovalRule.Replace, 3);
        var sample = Sample();
        Judge(contract, sample, ApprovalVerdict.Approved, null);

        Assert.Contains("no sample waits for approval", ContractDemo.Refusal(() => Judge(contract, sample, ApprovalVerdict.Approved, null)), StringComparison.Ordinal);
        Assert.Single(contract.Approvals);
    }

    [Fact]
    public void A_contract_of_two_lots_is_ready_when_both_are_approved()
    {
        var second = Id<Lot>.New();
        var terms = ContractDemo.Terms(ContractDemo.Outright, new ApprovalTerms(ApprovalRule.Replace, 3, null));
        terms = terms with { Lots = [.. terms.Lots, terms.Lots[0] with { LotId = second, Ref = "CA-18" }] };
        var contract = Contract.Draft("P26-002", Id<Supplier>.New(), terms, new Dictionary<Id<Lot>, Id<Decision>>(), ContractDemo.Buyer, ContractDemo.Now);
        contract.Sign(ContractDemo.Today, null, ContractDemo.Buyer, ContractDemo.Now);

        Judge(contract, Sample(), ApprovalVerdict.Approved, null);

        Assert.Equal(GoodsState.AwaitingApproval, contract.Goods);
        Assert.Contains("This lot is approved already", ContractDemo.Refusal(() => Judge(contract, Sample(), ApprovalVerdict.Approved, null)), StringComparison.Ordinal);
        Judge(contract, Sample(second), ApprovalVerdict.Approved, null);
        Assert.Equal(GoodsState.ReadyToShip, contract.Goods);
    }

    [Fact]
    public void Only_a_pre_shipment_sample_of_its_lots_is_judged_and_a_refusal_says_why()
    {
        var contract = Waiting(ApprovalRule.Replace, 3);

        Assert.Contains("no pre-shipment sample", ContractDemo.Refusal(() => Judge(contract, Sample(kind: SampleKind.Offer), ApprovalVerdict.Approved, null)), StringComparison.Ordinal);
        Assert.Contains("of no lot of this contract", ContractDemo.Refusal(() => Judge(contract, Sample(Id<Lot>.New()), ApprovalVerdict.Approved, null)), StringComparison.Ordinal);
        Assert.Contains("reasons for refusing", ContractDemo.Refusal(() => Judge(contract, Sample(), ApprovalVerdict.Refused, " ")), StringComparison.Ordinal);
        Assert.Empty(contract.Approvals);
    }

    private static Contract Waiting(ApprovalRule rule, int? most) =>
        ContractDemo.Signed(ContractDemo.Outright, new ApprovalTerms(rule, most, null));

    private static Sample Sample(Id<Lot>? lot = null, SampleKind kind = SampleKind.PreShipment) =>
        new(lot ?? ContractDemo.Lot, kind, "PSS" + Guid.NewGuid().ToString("N")[..8], ContractDemo.Today, Weight.FromGrams(500m));

    private static void Judge(Contract contract, Sample sample, ApprovalVerdict verdict, string? remarks) =>
        contract.Judge(sample, verdict, remarks, ContractDemo.Today, ContractDemo.Buyer, ContractDemo.Now);
}
