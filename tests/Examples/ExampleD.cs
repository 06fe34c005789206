using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Examples;

/// <summary>
/// Example D of handbook trade.md section 3.3: one full container from Honduras at 321.65 ¢/lb FOB Puerto Cortés, which
/// is +35 on 286.65, and every leg of its route.
/// </summary>
internal static class ExampleD
{
    public static FuturesMonth March { get; } = FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3);

    public static Parcel Parcel { get; } = new(
        PricePerWeight.FromCentsPerPound(321.65m), null, Incoterm.Fob, "Puerto Cortés", "HN", Weight.FromKilograms(18_975), 275);

    /// <summary>1.16 dollars buy one euro.</summary>
    public static ExchangeRate Rate(DateOnly on) => new(Currency.Usd, on, 1.16m, "handbook, trade 3.3", null, DateTimeOffset.UnixEpoch);

    public static FuturesQuote Quote(DateOnly on) => new(March, on, 286.65m, "handbook, trade 3.3", null, DateTimeOffset.UnixEpoch);

    /// <param name="instead">Legs in place of the example's own at their stages.</param>
    public static Route Route(params RouteLeg[] instead)
    {
        var route = new Route("Honduras to Hamburg", "Puerto Cortés / HNPCR", "Hamburg / DEHAM", "Hafen warehouse", "HN");
        route.Share(SharedOver.Quantity, Weight.FromKilograms(19_200), 1, Percent.Of(0.3m), Percent.Of(110m));
        route.Answer(Legs.Where(leg => !instead.Any(other => other.Stage == leg.Stage)).Concat(instead));
        return route;
    }

    private static IEnumerable<RouteLeg> Legs =>
    [
        RouteLeg.None(CostStage.Packing),
        RouteLeg.Of(CostStage.OriginLoading, LegBasis.PerBag, 0.25m, Currency.Usd),
        RouteLeg.Of(CostStage.InlandCarriage, LegBasis.PerKilogram, 0.04m, Currency.Usd),
        RouteLeg.Of(CostStage.ExportClearance, LegBasis.PerShipment, 180m, Currency.Usd),
        RouteLeg.Of(CostStage.OriginTerminal, LegBasis.PerContainer, 210m, Currency.Usd),
        RouteLeg.Included(CostStage.OnBoard),
        RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, 3_250m, Currency.Usd, "Ocean freight"),
        RouteLeg.Share(CostStage.Insurance, LegBasis.PercentOfCif, Percent.Of(0.35m)),
        RouteLeg.Of(CostStage.DestinationTerminal, LegBasis.PerContainer, 285m, Currency.Eur),
        RouteLeg.Of(CostStage.CarrierDocuments, LegBasis.PerShipment, 95m, Currency.Eur),
        RouteLeg.Of(CostStage.ImportClearance, LegBasis.PerShipment, 120m, Currency.Eur),
        RouteLeg.Of(CostStage.Inspection, LegBasis.PerShipment, 80m, Currency.Eur),
        RouteLeg.Share(CostStage.Duty, LegBasis.PercentOfCif, Percent.Of(0m)),
        RouteLeg.None(CostStage.HandlingOut),
        RouteLeg.Of(CostStage.Haulage, LegBasis.PerContainer, 640m, Currency.Eur),
        RouteLeg.Included(CostStage.Unloading),
        RouteLeg.Of(CostStage.WeighingAndSampling, LegBasis.PerShipment, 150m, Currency.Eur),
        RouteLeg.Interest(CostStage.Finance, Percent.Of(7.5m), 65),
        RouteLeg.PerTonneMonth(CostStage.Storage, 9.50m, Currency.Eur, 2),
    ];
}
