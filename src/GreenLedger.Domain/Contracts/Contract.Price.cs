using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Contracts;

/// <summary>What is fixed of the price of a contract, and the month that the rest stands against.</summary>
public sealed partial class Contract
{
    private readonly List<PriceFixing> _fixings = [];
    private readonly List<MonthRoll> _rolls = [];

    /// <summary>In the order they were entered, those taken back among them.</summary>
    public IReadOnlyList<PriceFixing> Fixings => _fixings;

    /// <summary>In the order they were entered.</summary>
    public IReadOnlyList<MonthRoll> Rolls => _rolls;

    /// <summary>What is fixed and what is open by the terms that hold; null for an outright price, or one that is not known.</summary>
    public FixingPosition? Position => PositionBy(Terms);

    /// <summary>Fixes whole lots of the market, or a weight, at a level of the day.</summary>
    /// <exception cref="RuleBrokenException">More than is open, no price of the market, or the contract is not signed.</exception>
    public void Fix(FixingOrder order, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(order);
        Rule.Require(Position is not null, $"The price of this contract is {Price.Word()}: there is nothing to fix.");
        RequireDay(order.On, at);
        FixingPosition.RequireLevel(Position.Market, order.Level, nameof(PriceFixing.Level));
        var weight = WeightOf(order, Position);
        Rule.Require(
            weight <= Position.Open,
            Position.IsFixed
                ? "All of this contract is fixed already: fix less, or amend the contract first."
                : $"Only {FixingPosition.Said(Position.Market, Position.Open)} {(Position.OpenLots == 1m ? "is" : "are")} open: fix less, or amend the contract first.",
            Terms.Price.MarketLots is null ? "Weight" : "Lots");
        _fixings.Add(new PriceFixing(_fixings.Count + 1, order, Position.Month, weight, Position.Differential, by, at));
        Go(PriceMove.Fix, order.On, null, by, at);
        Restate();
    }

    /// <summary>Takes a fixing back that was entered wrong or did not happen; it stays on record.</summary>
    /// <exception cref="RuleBrokenException">It does not count any more, has no reason, or what is open was rolled since.</exception>
    public void TakeBack(int number, string reason, DateOnly on, Id<Person> by, DateTimeOffset at)
    {
        var fixing = _fixings.Find(one => one.Number == number);
        Rule.Require(fixing is { Counts: true }, $"There is no fixing {number} that counts on this contract.");
        Rule.Require(
            fixing.Month == MonthBy(Terms),
            $"What was open has been rolled to {MonthBy(Terms)} since: enter a fixing there instead of taking this one back.", "Reason");
        fixing.TakeBack(reason, by, at);
        Go(PriceMove.TakeBack, on, fixing.TakenBackBecause, by, at);
        Restate();
    }

    /// <summary>Rolls all that is open to a later month.</summary>
    /// <exception cref="RuleBrokenException">Nothing is open, or the month is not a later one of the same market.</exception>
    public void Roll(RollOrder order, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(order);
        Rule.Require(Position is { IsFixed: false }, "Nothing of this contract is open: there is nothing to roll.");
        RequireDay(order.On, at);
        _rolls.Add(new MonthRoll(_rolls.Count + 1, Position, order, by, at));
        Go(PriceMove.Roll, order.On, null, by, at);
        Restate();
    }

    /// <summary>What a weight of this contract is worth; null where something is open and no settlement is known, or the price is not.</summary>
    public InvoiceValue? Value(Weight net, decimal? settlement) => Terms.Price.Outright is { } price
        ? InvoiceValue.Outright(price, net)
        : Position is { } position ? InvoiceValue.Of(position, net, settlement, Terms.Price.ProvisionalShare) : null;

    private FixingPosition? PositionBy(ContractTerms terms) => terms.Price is { Month: { } signed, Differential: { } agreed }
        ? FixingPosition.Of(
            _rolls.Count == 0 ? signed : _rolls[^1].To,
            _rolls.Count == 0 ? agreed : _rolls[^1].Differential,
            terms.Price.MarketLots is { } lots ? signed.Market.LotWeight() * lots : terms.Net(),
            [.. _fixings.Where(fixing => fixing.Counts).Select(fixing => fixing.Part)])
        : null;

    private FuturesMonth? MonthBy(ContractTerms terms) => _rolls.Count == 0 ? terms.Price.Month : _rolls[^1].To;

    private Weight WeightOf(FixingOrder order, FixingPosition position)
    {
        if (Terms.Price.MarketLots is null)
        {
            Rule.Require(order.Weight > Weight.Zero, "How many kilograms are fixed? This contract is fixed by weight.", "Weight");
            return order.Weight.Value;
        }

        Rule.Require(order.Lots > 0, "How many lots are fixed? One or more.", "Lots");
        Rule.Require(order.Lots <= 10_000, "These are more lots than any contract has: please check the figure.", "Lots");
        return position.Market.LotWeight() * order.Lots.Value;
    }

    /// <summary>New terms may not contradict what is fixed or rolled already.</summary>
    private void RequireFitting(ContractTerms terms)
    {
        if (_rolls.Count == 0 && !_fixings.Exists(fixing => fixing.Counts))
        {
            return;
        }

        var (now, then) = (Terms.Price, terms.Price);
        Rule.Require(
            (then.Month, then.Differential, then.MarketLots is null) == (now.Month, now.Differential, now.MarketLots is null),
            "Part of this contract is fixed or rolled: month, differential and way of fixing stay as they were signed.", nameof(PriceTerms.Outright));
        PositionBy(terms);
    }

    private static void RequireDay(DateOnly on, DateTimeOffset at) =>
        Rule.Require(on <= DateOnly.FromDateTime(at.UtcDateTime.AddHours(14)), "This day lies ahead: a fixing or a roll is entered when it has happened.", "On");
}
