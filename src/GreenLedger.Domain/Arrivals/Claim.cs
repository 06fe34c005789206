using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Arrivals;

/// <summary>
/// What the house claims of the seller for one arrival, or for goods that did not come. Grounds, evidence, deadlines and amount are frozen when it is opened;
/// correspondence and outcome follow.
/// </summary>
public sealed class Claim
{
    private readonly List<ClaimNote> _notes = [];
    private readonly List<ClaimSettlement> _settlements = [];

    private Claim()
    {
        Ref = SearchText = "";
        Case = null!;
    }

    private Claim(string @ref, Contract contract, Id<Lot> lotId, ClaimCase found, DateOnly on, string? lateReason, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<Claim>.New();
        Ref = Rule.Text(@ref, "The number of the claim", 20, nameof(Ref));
        (ContractId, LotId) = (contract.Id, lotId);
        (Case, On, Amount, LastDay, IsLate) = (found, on, found.Amount(), found.LastDay(), found.IsLate());
        LateReason = Rule.OptionalText(lateReason, "The reason for a late claim", 1000, nameof(LateReason));
        Rule.Require(!IsLate || LateReason is not null, "A deadline is past: say why the claim is made all the same. It is flagged as late.", nameof(LateReason));
        (By, At) = (by, at);
        SearchText = Measures.SearchText.Of([Ref, found.Parties.Seller, found.Parties.ContractRef, found.Goods.LotRef, found.Goods.LotName, found.Goods.ShipmentRef]);
    }

    public Id<Claim> Id { get; private set; }

    public int Version { get; private set; }

    /// <summary>The house's own number of the claim: C26-003.</summary>
    public string Ref { get; private set; }

    /// <summary>Null for goods that did not come.</summary>
    public Id<Arrival>? ArrivalId { get; private set; }

    /// <summary>On which they went on board and did not arrive; null for what was never shipped, and for a claim on an arrival.</summary>
    public Id<Shipment>? ShipmentId { get; private set; }

    public Id<Contract> ContractId { get; private set; }

    public Id<Lot> LotId { get; private set; }

    /// <summary>The day on which it was made.</summary>
    public DateOnly On { get; private set; }

    /// <summary>As it was opened.</summary>
    public ClaimCase Case { get; private set; }

    /// <summary>Null where none was stated.</summary>
    public Money? Amount { get; private set; }

    /// <summary>The first deadline of the claim itself, weighing left aside; null where none was known.</summary>
    public DateOnly? LastDay { get; private set; }

    /// <summary>A deadline was past when it was made.</summary>
    public bool IsLate { get; private set; }

    public string? LateReason { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }

    /// <summary>Null while it is open.</summary>
    public ClaimOutcome? Outcome { get; private set; }

    public DateOnly? SettledOn { get; private set; }

    /// <summary>What the seller pays or credits; null where nothing.</summary>
    public Money? Settled { get; private set; }

    /// <summary>How many notes there are; with each the claim itself changes, so that two people do not write the same one.</summary>
    public int NoteCount { get; private set; }

    public string SearchText { get; private set; }

    public bool IsOpen => Outcome is null;

    /// <summary>It was made late, and the seller, or who arbitrated, went into it all the same: with the reason among the words of the outcome.</summary>
    public bool IsAcceptedLate => IsLate && Outcome is { } outcome && IsAccepting(outcome, Settled);

    /// <summary>In the order they were written.</summary>
    public IReadOnlyList<ClaimNote> Notes => _notes;

    /// <summary>Outcomes in the order they were entered, those taken back among them.</summary>
    public IReadOnlyList<ClaimSettlement> Settlements => _settlements;

    /// <summary>What the outcome does to the cost of a kilogram; null where no price is known or the goods went back.</summary>
    public CostEffect? Effect => Outcome is null or ClaimOutcome.Rejection ? null : CostEffect.Of(Case, Settled);

    /// <summary>Opens a claim from an arrival's verdicts and freezes both.</summary>
    /// <param name="others">Every claim on this arrival so far.</param>
    /// <exception cref="RuleBrokenException">
    /// A ground is not shown or already claimed, the day or the amount cannot be, or a late claim has no reason.
    /// </exception>
    public static Claim Open(string @ref, ClaimBasis basis, ClaimOrder order, IReadOnlyCollection<Claim> others, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(order);
        Rule.Require(order.On >= basis.Arrival.ReceivedOn, "A claim is made on the day of receipt or later.", nameof(On));
        RequireDay(order.On, at);
        var found = ClaimCase.Of(basis, order);
        var claim = new Claim(@ref, basis.Contract, basis.Lot.Id, found, order.On, order.LateReason, by, at) { ArrivalId = basis.Arrival.Id };
        claim.RequireOwnGrounds(others);
        return claim;
    }

    /// <summary>Opens a claim on goods that did not come, and freezes what was agreed and what is missing.</summary>
    /// <param name="others">Every claim under this contract so far.</param>
    /// <exception cref="RuleBrokenException">Nothing is missing or it is claimed already, the day or the amount cannot be, or a late claim has no reason.</exception>
    public static Claim Open(string @ref, MissingGoods goods, MissingOrder order, IReadOnlyCollection<Claim> others, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(goods);
        ArgumentNullException.ThrowIfNull(order);
        RequireDay(order.On, at);
        var claim = new Claim(@ref, goods.Contract, goods.Lot.LotId, MissingCase.Of(goods, order), order.On, order.LateReason, by, at) { ShipmentId = goods.Shipment?.Id };
        claim.RequireOwnGrounds(others);
        return claim;
    }

    /// <summary>Writes down what was said or written about it, and when.</summary>
    /// <exception cref="RuleBrokenException">The text is missing, or the day lies ahead or before the goods were received.</exception>
    public void Note(ClaimSide side, DateOnly on, string text, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(Enum.IsDefined(side), "Say who spoke: we to the seller, the seller to us, or the house among itself.", nameof(ClaimNote.Side));
        Rule.Require(Case.Receipt is not { } receipt || on >= receipt.On, "Nothing was said of a claim before the goods were received.", nameof(ClaimNote.On));
        Rule.Require(Case.Missing is not { } missing || on >= missing.ShipFrom, "Nothing was said of goods that did not come before their shipment period began.", nameof(ClaimNote.On));
        RequireDay(on, at);
        _notes.Add(new ClaimNote(_notes.Count + 1, side, on, text, by, at));
        NoteCount = _notes.Count;
    }

    /// <summary>Enters how it ended.</summary>
    /// <exception cref="RuleBrokenException">It is settled already, or the outcome lacks its amount or its words.</exception>
    public void Settle(ClaimOutcome outcome, Money? amount, DateOnly on, string? words, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(IsOpen, $"Claim {Ref} is settled already: {Outcome?.Word()}. Take that back first if it was entered wrong.", nameof(Outcome));
        Rule.Require(Enum.IsDefined(outcome), "Choose how it ended.", nameof(Outcome));
        Rule.Require(on >= On, "It cannot have ended before it was made.", nameof(ClaimSettlement.On));
        RequireDay(on, at);
        Rule.Require(outcome != ClaimOutcome.Rejection || Case.Missing is null, "Nothing came that could be refused: choose another outcome.", nameof(Outcome));
        Rule.Require(outcome != ClaimOutcome.Allowance || amount is not null, "How much did the seller allow?", nameof(Amount));
        Rule.Require(outcome != ClaimOutcome.Withdrawn || amount is null, "A claim that is withdrawn brings no money: leave the amount out, or choose an allowance.", nameof(Amount));
        Rule.Require(amount is null or { MinorUnits: > 0 }, "The amount lies above 0; leave it out where nothing is paid.", nameof(Amount));
        Rule.Require(amount is null || amount.Value.Currency == Case.Currency, $"This contract is paid in {Case.Currency}: enter the amount in it.", nameof(Amount));
        var isAcceptedLate = IsLate && IsAccepting(outcome, amount);
        Rule.Require(!isAcceptedLate || !string.IsNullOrWhiteSpace(words), "This claim was made late: say why it was accepted all the same. It is flagged as late.", nameof(ClaimSettlement.Words));
        var text = outcome == ClaimOutcome.Allowance && (Amount is not { } claimed || amount <= claimed)
            ? Rule.OptionalText(words, "The words on it", 2000, nameof(ClaimSettlement.Words))
            : Rule.Text(words, outcome == ClaimOutcome.Allowance ? "The amount is more than was claimed: why" : "What was agreed or decided", 2000, nameof(ClaimSettlement.Words));
        _settlements.Add(new ClaimSettlement(_settlements.Count + 1, outcome, amount, on, text, by, at));
        (Outcome, Settled, SettledOn) = (outcome, amount, on);
    }

    /// <summary>Takes an outcome back that was entered wrong; it stays on record and the claim is open again.</summary>
    /// <exception cref="RuleBrokenException">It is open, or no reason is given.</exception>
    public void Reopen(IEnumerable<Claim> others, string reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(!IsOpen, $"Claim {Ref} is open: there is no outcome to take back.");
        RequireOwnGrounds(others);
        _settlements[^1].TakeBack(reason, by, at);
        (Outcome, Settled, SettledOn) = (null, null, null);
    }

    /// <summary>Whether an outcome gives the house something.</summary>
    private static bool IsAccepting(ClaimOutcome outcome, Money? amount) =>
        outcome is ClaimOutcome.Allowance or ClaimOutcome.Replacement or ClaimOutcome.Rejection || (outcome == ClaimOutcome.Arbitration && amount is not null);

    private void RequireOwnGrounds(IEnumerable<Claim> others)
    {
        foreach (var other in others.Where(other => other.Id != Id && IsBeside(other) && other.Outcome != ClaimOutcome.Withdrawn))
        {
            var again = Case.Grounds().Intersect(other.Case.Grounds()).ToList();
            Rule.Require(again.Count == 0, $"Claim {other.Ref} on {(ArrivalId is null ? "these goods" : "this arrival")} names {string.Join(" and ", again.Select(ground => ground.Word()))} already: go on there.", nameof(ClaimOrder.Grounds));
        }
    }

    private bool IsBeside(Claim other) => (other.ArrivalId, other.ContractId, other.LotId, other.ShipmentId) == (ArrivalId, ContractId, LotId, ShipmentId);

    private static void RequireDay(DateOnly on, DateTimeOffset at) =>
        Rule.Require(on <= DateOnly.FromDateTime(at.UtcDateTime.AddHours(14)), "This day lies ahead: enter what has happened.", nameof(On));
}
