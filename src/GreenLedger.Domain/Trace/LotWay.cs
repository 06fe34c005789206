using System.Globalization;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Trace;

/// <summary>What the rooms know of a lot so far; a null has not happened.</summary>
public sealed record WayFacts(
    DateOnly? OfferedOn,
    Score? StatedScore,
    DateOnly? SampledOn,
    Weight? SampleWeight,
    DateOnly? CuppedOn,
    Score? PanelScore,
    DateOnly? ChosenOn,
    Outcome? Chosen,
    Weight? ChosenQuantity,
    DateOnly? ContractedOn = null,
    string? Contract = null,
    DateOnly? ShippedOn = null,
    Weight? Shipped = null,
    DateOnly? ArrivedOn = null,
    Weight? Landed = null,
    DateOnly? StockedOn = null,
    Weight? InStock = null);

/// <summary>
/// The lot's way: where this coffee is and how good it was found at each stop, in the order in which coffee travels.
/// </summary>
public static class LotWay
{
    public static IReadOnlyList<WayStop> Of(WayFacts facts) =>
    [
        new("offered", facts.OfferedOn, facts.StatedScore is { } stated ? $"stated {Points(stated)}" : null),
        new("sampled", facts.SampledOn, facts.SampleWeight is { } weight ? weight.Grams.ToString("#,0", Reader) + " g" : null),
        new("cupped", facts.CuppedOn, facts.PanelScore is { } score ? Points(score) : null),
        new("chosen", facts.ChosenOn, Chosen(facts)),
        new("contracted", facts.ContractedOn, facts.Contract),
        new("shipped", facts.ShippedOn, Kilograms(facts.Shipped)),
        new("arrived", facts.ArrivedOn, Kilograms(facts.Landed)),
        new("in stock", facts.StockedOn, Kilograms(facts.InStock)),
    ];

    private static CultureInfo Reader => CultureInfo.InvariantCulture;

    private static string? Chosen(WayFacts facts) => facts.Chosen switch
    {
        Outcome.Buy => $"buy {Kilograms(facts.ChosenQuantity)}",
        Outcome.Hold => "hold",
        Outcome.Decline => "decline",
        _ => null,
    };

    private static string? Kilograms(Weight? weight) => weight is { } known ? known.Kilograms.ToString("#,0.##", Reader) + " kg" : null;

    private static string Points(Score score) => score.Points.ToString("0.00", Reader);
}
