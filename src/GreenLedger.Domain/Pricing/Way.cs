using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Pricing;

/// <summary>A route made ready for one delivery rule and place.</summary>
internal sealed record Way(Route? Route, CostSplit Split, bool IsAssumed, RouteLeg[] Legs, CostStage[] Unanswered)
{
    public static Way Nowhere { get; } =
        new(null, CostSplit.Of(Incoterm.Fob, DeliveryPlace.PortOfLoading), false, [], []);
}
