using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Contracts;

/// <summary>The moves of the goods, and how both machines are asked.</summary>
public sealed partial class Contract
{
    /// <summary>Whether the goods could make this move now.</summary>
    public bool Allows(GoodsMove move) => GoodsMachine.Allows(Goods, move, GoodsFacts());

    /// <summary>Enters what happened to the goods.</summary>
    /// <exception cref="RuleBrokenException">The move cannot be made from here, or has an act of its own.</exception>
    public void Enter(GoodsMove move, DateOnly on, string? reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(
            move is GoodsMove.Ship or GoodsMove.ShipNoMore or GoodsMove.Arrive or GoodsMove.Close or GoodsMove.Cancel,
            "Signing, amending, approving and shipping a part have acts of their own: enter here that it shipped or arrived, that no more is shipped, or that it is closed or cancelled.", "Move");
        switch (move)
        {
            case GoodsMove.Ship: Ship(on, reason, by, at); break;
            case GoodsMove.ShipNoMore: ShipNoMore(on, reason, by, at); break;
            case GoodsMove.Arrive: Arrive(on, reason, by, at); break;
            case GoodsMove.Close: Close(on, reason, by, at); break;
            default: Cancel(on, reason, by, at); break;
        }
    }

    /// <summary>All of it is on board, without a shipment written down: the day is that of the bill of lading.</summary>
    /// <exception cref="RuleBrokenException">It cannot ship from here, a part is on board, or a breach has no reason.</exception>
    public void Ship(DateOnly on, string? reason, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(ShippedOn is null, $"Contract {Ref} has coffee on board since {Day(ShippedOn)}: write down the next shipment, or enter that no more is shipped.", "Move");
        Board([.. _lots.Select(lot => lot.LotId)], isAll: true, on, reason, by, at);
    }

    /// <summary>Lots go on board together. Of a lot without the approval that is asked for it is the seller's breach.</summary>
    /// <param name="lots">Those that had not been told as on board yet.</param>
    /// <param name="isAll">Whether with them all that was agreed is on board.</param>
    /// <param name="on">The day of the bill of lading.</param>
    /// <param name="reason">What happened, where it is a breach.</param>
    /// <param name="by">Who enters it.</param>
    /// <param name="at">When it is entered.</param>
    /// <exception cref="RuleBrokenException">It cannot ship from here, or a breach has no reason.</exception>
    public void Board(IReadOnlyCollection<Id<Lot>> lots, bool isAll, DateOnly on, string? reason, Id<Person> by, DateTimeOffset at)
    {
        var isBreach = lots.Any(LacksApproval);
        var why = Rule.OptionalText(reason, "The reason", 1000, "Reason");
        Rule.Require(!isBreach || why is not null, "It shipped without the approval that the contract asks for: say what happened. It stays on record as a breach.", "Reason");
        Go(isAll ? GoodsMove.Ship : GoodsMove.ShipPart, on, why, by, at, isBreach);
        Restate();
    }

    /// <summary>What is not on board will not come: the seller shipped less than agreed, and both sides leave it at that.</summary>
    /// <exception cref="RuleBrokenException">Nothing is on board in part, or there is no reason.</exception>
    public void ShipNoMore(DateOnly on, string? reason, Id<Person> by, DateTimeOffset at)
    {
        Go(GoodsMove.ShipNoMore, on, Rule.Text(reason, "The reason why no more is shipped", 1000, "Reason"), by, at);
        Restate();
    }

    /// <summary>Whether a lot may not ship as approved: an approval is asked for, and none is on record.</summary>
    public bool LacksApproval(Id<Lot> lot) => Terms.Approval.IsAsked() && !IsApproved(lot);

    public void Arrive(DateOnly on, string? note, Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(Goods != GoodsState.Shipped || on >= ShippedOn, $"It shipped on {Day(ShippedOn)}: it cannot have arrived before.", "On");
        Go(GoodsMove.Arrive, on, Rule.OptionalText(note, "The note", 1000, "Reason"), by, at);
        Restate();
    }

    /// <summary>Everything is settled.</summary>
    /// <exception cref="RuleBrokenException">It has not arrived, or its price is not fixed.</exception>
    public void Close(DateOnly on, string? note, Id<Person> by, DateTimeOffset at)
    {
        Go(GoodsMove.Close, on, Rule.OptionalText(note, "The note", 1000, "Reason"), by, at);
        Restate();
    }

    /// <summary>The day on board, of the last part that was entered; null while nothing has shipped.</summary>
    public DateOnly? ShippedOn => LastDayOf(GoodsMove.Ship, GoodsMove.ShipPart);

    public DateOnly? ArrivedOn => LastDayOf(GoodsMove.Arrive);

    /// <summary>Days on board after the end of the shipment period; 0 when in time, null while nothing has shipped.</summary>
    public int? DaysLate => ShippedOn is { } on ? Math.Max(0, on.DayNumber - ShipUntil.DayNumber) : null;

    private DateOnly? LastDayOf(params GoodsMove[] moves) =>
        _moves.Where(one => one.Axis == MoveAxis.Goods && moves.Any(move => one.Move == move.Word())).MaxBy(one => one.Number)?.On;

    private void Go(GoodsMove move, DateOnly on, string? reason, Id<Person> by, DateTimeOffset at, bool isBreach = false)
    {
        var from = Goods;
        Goods = GoodsMachine.After(from, move, GoodsFacts());
        Record(MoveAxis.Goods, (move.Word(), from.Word(), Goods.Word()), on, reason, isBreach, by, at);
    }

    private void Go(PriceMove move, DateOnly on, string? reason, Id<Person> by, DateTimeOffset at)
    {
        var from = Price;
        Price = PriceMachine.After(from, move, PriceFacts());
        Record(MoveAxis.Price, (move.Word(), from.Word(), Price.Word()), on, reason, false, by, at);
    }

    private void Record(MoveAxis axis, (string Move, string From, string To) words, DateOnly on, string? reason, bool isBreach, Id<Person> by, DateTimeOffset at) =>
        _moves.Add(new ContractMove(_moves.Count + 1, axis, words, on, reason, isBreach, by, at));

    private GoodsFacts GoodsFacts() => new(Terms.Approval.IsAsked(), IsApprovedInFull, RefusalCancels, Price.IsKnown() || Price == PriceState.NotKnown);

    private PriceFacts PriceFacts()
    {
        var position = Position;
        return new PriceFacts(IsSigned && IsOpen, position is { IsFixed: true }, position is null || position.Parts.Count == 0, Terms.Price.IsOutright());
    }
}
