using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Contracts;

/// <summary>Which of the two moved.</summary>
public enum MoveAxis
{
    Goods = 0,
    Price = 1,
}

/// <summary>One move of the goods or the price of a contract: what, on which day, from where to where, who entered it and when.</summary>
public sealed class ContractMove
{
    private ContractMove() => Move = From = To = "";

    internal ContractMove(int number, MoveAxis axis, (string Move, string From, string To) words, DateOnly on, string? reason, bool isBreach, Id<Person> by, DateTimeOffset at)
    {
        Id = Id<ContractMove>.New();
        Number = number;
        Axis = axis;
        (Move, From, To) = words;
        On = on;
        Reason = reason;
        IsBreach = isBreach;
        By = by;
        At = at;
    }

    public Id<ContractMove> Id { get; private set; }

    public int Number { get; private set; }

    public MoveAxis Axis { get; private set; }

    public string Move { get; private set; }

    public string From { get; private set; }

    public string To { get; private set; }

    /// <summary>The day that it happened.</summary>
    public DateOnly On { get; private set; }

    public string? Reason { get; private set; }

    /// <summary>What the other side did against the contract: recorded as it happened, and never counted as approved.</summary>
    public bool IsBreach { get; private set; }

    public Id<Person> By { get; private set; }

    public DateTimeOffset At { get; private set; }
}
