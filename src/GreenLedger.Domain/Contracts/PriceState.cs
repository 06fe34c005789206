namespace GreenLedger.Domain.Contracts;

/// <summary>How far the price of a contract is known; the goods move on their own (handbook, trade 4.4).</summary>
public enum PriceState
{
    Outright = 0,
    Unfixed = 1,
    PartlyFixed = 2,
    Fixed = 3,

    /// <summary>Of a purchase from before this ledger began whose price nobody wrote down; nothing moves it.</summary>
    NotKnown = 4,
}

/// <summary>What moves the price of a contract on.</summary>
public enum PriceMove
{
    Fix = 0,

    /// <summary>A fixing that was typed wrong or did not happen.</summary>
    TakeBack = 1,

    /// <summary>What is open goes to a later futures month.</summary>
    Roll = 2,

    /// <summary>A signed amendment that names another price or way of pricing.</summary>
    Amend = 3,
}

public static class PriceStates
{
    public static string Word(this PriceState state) => state switch
    {
        PriceState.Outright => "outright",
        PriceState.Unfixed => "unfixed",
        PriceState.PartlyFixed => "partly fixed",
        PriceState.Fixed => "fixed",
        PriceState.NotKnown => "not known",
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };

    public static string Word(this PriceMove move) => move switch
    {
        PriceMove.Fix => "fix",
        PriceMove.TakeBack => "take a fixing back",
        PriceMove.Roll => "roll",
        PriceMove.Amend => "amend",
        _ => throw new ArgumentOutOfRangeException(nameof(move)),
    };

    /// <summary>Whether nothing is left to be fixed.</summary>
    public static bool IsKnown(this PriceState state) => state is PriceState.Outright or PriceState.Fixed;
}
