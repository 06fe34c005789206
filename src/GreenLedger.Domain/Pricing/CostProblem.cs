namespace GreenLedger.Domain.Pricing;

/// <summary>What kind of figure a landed cost lacks, so that a page can lead to where it is filled in.</summary>
public enum CostGap
{
    Price = 0,
    Quantity = 1,
    Bags = 2,
    Route = 3,
    Stage = 4,
    ExchangeRate = 5,
    FuturesQuote = 6,
    Delivery = 7,
}

/// <summary>A figure that a landed cost lacks, in a sentence that says which one. The stage is null where it is none.</summary>
public sealed record CostProblem(CostGap Gap, string Message, CostStage? Stage = null);
