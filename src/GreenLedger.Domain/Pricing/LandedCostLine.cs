using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Pricing;

/// <summary>
/// One line of a landed cost: the coffee itself (no stage, no leg) or a leg of the route. Lines that the seller pays,
/// that are in another leg or that do not occur stand with zero, so that every stage is seen.
/// </summary>
public sealed record LandedCostLine(
    CostStage? Stage,
    string Name,
    Payer Payer,
    RouteLeg? Leg,
    Money Original,
    Money Amount,
    decimal PerKilogram,
    Conversion Conversion,
    string Arithmetic)
{
    /// <summary>False where the rate for the charge's currency is missing: then <see cref="Amount"/> says nothing.</summary>
    public bool IsConverted => Original.Currency == Amount.Currency || !Conversion.IsSame;

    /// <summary>True when the line adds to the total.</summary>
    public bool Counts => Payer == Payer.Buyer && Leg is null or { Answer: LegAnswer.Amount };
}
