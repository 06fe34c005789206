namespace GreenLedger.Domain.Origins;

/// <summary>The broad way of processing that a method belongs to: what charts and rules group by.</summary>
public enum ProcessFamily
{
    /// <summary>Pulped and freed of mucilage before drying.</summary>
    Washed = 0,

    /// <summary>Pulped and dried with mucilage on: honey, pulped natural.</summary>
    Honey = 1,

    /// <summary>Dried in the cherry.</summary>
    Natural = 2,

    /// <summary>Hulled while still wet.</summary>
    WetHulled = 3,

    /// <summary>Anything else, such as a fermentation whose drying is not stated, or decaffeinated.</summary>
    Other = 4,
}

public static class ProcessFamilies
{
    public static string Word(this ProcessFamily family) => family switch
    {
        ProcessFamily.Washed => "washed",
        ProcessFamily.Honey => "honey",
        ProcessFamily.Natural => "natural",
        ProcessFamily.WetHulled => "wet-hulled",
        ProcessFamily.Other => "other",
        _ => throw new ArgumentOutOfRangeException(nameof(family)),
    };
}
