namespace GreenLedger.Domain.Contracts;

/// <summary>How far the coffee of a contract has come; the price moves on its own (handbook, trade 4.4).</summary>
public enum GoodsState
{
    /// <summary>Nobody has signed it yet.</summary>
    Drafted = 0,

    /// <summary>Signed; nothing may ship as approved before its samples are.</summary>
    AwaitingApproval = 1,
    ReadyToShip = 2,
    Shipped = 3,
    Arrived = 4,
    Closed = 5,
    Cancelled = 6,

    /// <summary>Some of it is on board, and more is to come.</summary>
    PartShipped = 7,
}

/// <summary>What moves the goods of a contract on.</summary>
public enum GoodsMove
{
    Sign = 0,

    /// <summary>A signed amendment.</summary>
    Amend = 1,
    Approve = 2,
    Refuse = 3,
    Ship = 4,
    Arrive = 5,
    Close = 6,
    Cancel = 7,

    /// <summary>A part goes on board, and more is to come.</summary>
    ShipPart = 8,

    /// <summary>What is not on board yet will not come.</summary>
    ShipNoMore = 9,
}

public static class GoodsStates
{
    public static string Word(this GoodsState state) => state switch
    {
        GoodsState.Drafted => "draft",
        GoodsState.AwaitingApproval => "awaiting approval",
        GoodsState.ReadyToShip => "ready to ship",
        GoodsState.Shipped => "shipped",
        GoodsState.Arrived => "arrived",
        GoodsState.Closed => "closed",
        GoodsState.Cancelled => "cancelled",
        GoodsState.PartShipped => "part shipped",
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };

    public static string Word(this GoodsMove move) => move switch
    {
        GoodsMove.Sign => "sign",
        GoodsMove.Amend => "amend",
        GoodsMove.Approve => "approve",
        GoodsMove.Refuse => "refuse",
        GoodsMove.Ship => "ship",
        GoodsMove.Arrive => "arrive",
        GoodsMove.Close => "close",
        GoodsMove.Cancel => "cancel",
        GoodsMove.ShipPart => "ship a part",
        GoodsMove.ShipNoMore => "ship no more",
        _ => throw new ArgumentOutOfRangeException(nameof(move)),
    };
}
