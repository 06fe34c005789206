namespace GreenLedger.Domain.Arrivals;

/// <summary>What a claim rests on. Each must be shown by what the system found, or the claim cannot name it.</summary>
public enum ClaimGround
{
    /// <summary>It cups short of the approved sample by more than the tolerance.</summary>
    Cup = 0,

    /// <summary>Moisture, water activity, screen or defects lie outside their limits.</summary>
    PhysicalLimits = 1,

    /// <summary>More weight is lost than the franchise.</summary>
    Weight = 2,

    /// <summary>Wet, torn, stained or infested bags, odour, a broken seal.</summary>
    Condition = 3,

    /// <summary>It was on board after the last day of the shipment period.</summary>
    Lateness = 4,

    /// <summary>It was never on board, though the shipment period has ended.</summary>
    NotShipped = 5,

    /// <summary>It went on board and was never received.</summary>
    NotArrived = 6,
}

public static class ClaimGrounds
{
    public static string Word(this ClaimGround ground) => ground switch
    {
        ClaimGround.Cup => "quality in the cup",
        ClaimGround.PhysicalLimits => "physical limits",
        ClaimGround.Weight => "weight",
        ClaimGround.Condition => "condition",
        ClaimGround.Lateness => "lateness",
        ClaimGround.NotShipped => "goods not shipped",
        ClaimGround.NotArrived => "goods that did not arrive",
        _ => throw new ArgumentOutOfRangeException(nameof(ground)),
    };

    /// <summary>Whether the days for claims on quality count for it; else those for other claims do.</summary>
    public static bool IsQuality(this ClaimGround ground) => ground is ClaimGround.Cup or ClaimGround.PhysicalLimits;
}
