using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Tests.Pricing;

/// <summary>The route, the rates and the parcel of the handbook's Example D (trade 3.3), which tests vary.</summary>
internal static class PricingDemo
{
    public static readonly DateOnly Today = new(2026, 11, 25);
    public static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 0, 0, TimeSpan.Zero);

    public static readonly FuturesMonth March = FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3);

    public static Parcel Parcel => new(
        PricePerWeight.FromCentsPerPound(321.65m), null, Incoterm.Fob, "Puerto Cortés", "HN", Weight.FromKilograms(18_975), 275);

    public static ExchangeRates Rates => new([Rate(Currency.Usd, 1.16m), Rate(Currency.Gbp, 0.87m), Rate(Currency.Of("BRL"), 6.25m)]);

    public static FuturesQuotes Quotes => new([Quote(March, 286.65m, Today.AddDays(-1))]);

    public static IReadOnlySet<Currency> LongYears { get; } = new HashSet<Currency> { Currency.Gbp };

    /// <summary>Every figure of Example D; one full container is the parcel itself.</summary>
    public static Route Route(params RouteLeg[] instead)
    {
        var route = new Route("Honduras to Hamburg", "Puerto Cortés / HNPCR", "Hamburg / DEHAM", "Hafen warehouse", "HN");
        route.Share(SharedOver.Quantity, Weight.FromKilograms(19_200), 1, Percent.Of(0.3m), Percent.Of(110m));
        route.Answer(Legs.Where(leg => !instead.Any(other => other.Stage == leg.Stage)).Concat(instead));
        return route;
    }

    public static LandedCosts Costs(params Route[] routes) => new(Currency.Eur, Today, routes, Rates, Quotes, LongYears);

    public static LandedCost Cost(Parcel parcel, params RouteLeg[] instead) => Costs(Route(instead)).Of(parcel);

    public static ExchangeRate Rate(Currency currency, decimal unitsPerEuro, DateOnly? on = null) =>
        new(currency, on ?? new DateOnly(2026, 11, 24), unitsPerEuro, "European Central Bank", null, Now);

    public static FuturesQuote Quote(FuturesMonth month, decimal quoted, DateOnly on) =>
        new(month, on, quoted, "the exchange's settlement", null, Now);

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
