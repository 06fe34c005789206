namespace GreenLedger.Domain.Trace;

/// <summary>Where a lot is that the house bought.</summary>
public enum BoughtStage
{
    /// <summary>Contracted, and part of it not on board.</summary>
    Contracted = 0,

    /// <summary>On board and not received.</summary>
    Afloat = 1,

    /// <summary>In a warehouse of the house.</summary>
    InStock = 2,
}

public static class BoughtStages
{
    public static string Word(this BoughtStage stage) => stage switch
    {
        BoughtStage.Contracted => "contracted",
        BoughtStage.Afloat => "afloat",
        BoughtStage.InStock => "in stock",
        _ => throw new ArgumentOutOfRangeException(nameof(stage)),
    };
}
