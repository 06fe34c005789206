using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Benchmarks.Choosing;

/// <summary>From where the offers come, and what their routes, rates and quotes are. All figures invented.</summary>
internal sealed record Ways(string Country, Incoterm Delivery, string Place, decimal BagKg, string Quoting)
{
    private const string Source = "Invented";

    public static DateOnly On { get; } = new(2026, 11, 25);

    public static IReadOnlyList<Ways> All { get; } =
    [
        new("BR", Incoterm.Fob, "Santos", 60m, "KC"),
        new("CO", Incoterm.Fob, "Buenaventura", 70m, "USD/lb"),
        new("ET", Incoterm.Fob, "Djibouti", 60m, "USD/lb"),
        new("GT", Incoterm.Fob, "Puerto Quetzal", 69m, "KC"),
        new("KE", Incoterm.Fob, "Mombasa", 60m, "USD/kg"),
        new("HN", Incoterm.ExWarehouse, "Antwerp", 69m, "EUR/kg"),
    ];

    private static FuturesMonth March { get; } = FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3);

    public Asking Ask(Random random)
    {
        var level = 5.6m + (random.Next(700) / 100m);
        return Quoting switch
        {
            "KC" => Asking.Against(Differential.Of(March, -10m + (random.Next(500) / 2m))),
            "USD/lb" => Asking.Outright(PricePerWeight.Of(Math.Round(level * 0.45m * 400m) / 400m, Currency.Usd, PriceUnit.Pound)),
            "USD/kg" => Asking.Outright(PricePerWeight.Of(level, Currency.Usd, PriceUnit.Kilogram)),
            _ => Asking.Outright(PricePerWeight.Of(level, Currency.Eur, PriceUnit.Kilogram)),
        };
    }

    public static IEnumerable<Route> Routes() => All.Select((way, at) => way.Delivery == Incoterm.Fob ? way.FromPort(1_650m + (at * 150m), 80 + at) : way.Spot());

    /// <summary>Two years of days, so that the newest has to be found among many.</summary>
    public static IEnumerable<object> Figures()
    {
        for (var day = On.AddYears(-2); day <= On; day = day.AddDays(1))
        {
            yield return new ExchangeRate(Currency.Usd, day, 1.08m + (day.DayNumber % 97 / 1000m), Source, null, DateTimeOffset.UnixEpoch);
            yield return new FuturesQuote(March, day, 290m + (day.DayNumber % 61), Source, null, DateTimeOffset.UnixEpoch);
        }
    }

    private Route FromPort(decimal freight, int days)
    {
        var route = new Route($"{Place} to Antwerp", Place, "Antwerp", "Antwerp", Country);
        route.Share(SharedOver.Fill, Weight.FromKilograms(19_200m), 1, Percent.Of(0.3m), Percent.Of(110m));
        route.Answer(
        [
            RouteLeg.Included(CostStage.Packing),
            RouteLeg.Of(CostStage.OriginLoading, LegBasis.PerBag, 0.35m, Currency.Usd),
            RouteLeg.Of(CostStage.InlandCarriage, LegBasis.PerContainer, 520m, Currency.Usd),
            RouteLeg.Of(CostStage.ExportClearance, LegBasis.PerShipment, 180m, Currency.Usd),
            RouteLeg.Of(CostStage.OriginTerminal, LegBasis.PerContainer, 260m, Currency.Usd),
            RouteLeg.Included(CostStage.OnBoard),
            RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, freight, Currency.Usd),
            RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, 210m, Currency.Usd, "Surcharges"),
            RouteLeg.Share(CostStage.Insurance, LegBasis.PercentOfCif, Percent.Of(0.28m)),
            RouteLeg.Of(CostStage.DestinationTerminal, LegBasis.PerContainer, 268m, Currency.Eur),
            RouteLeg.Of(CostStage.CarrierDocuments, LegBasis.PerShipment, 95m, Currency.Eur),
            RouteLeg.Of(CostStage.ImportClearance, LegBasis.PerShipment, 115m, Currency.Eur),
            RouteLeg.Of(CostStage.Inspection, LegBasis.PerShipment, 85m, Currency.Eur),
            RouteLeg.None(CostStage.Duty),
            RouteLeg.None(CostStage.HandlingOut),
            RouteLeg.Of(CostStage.Haulage, LegBasis.PerContainer, 325m, Currency.Eur),
            RouteLeg.Of(CostStage.Unloading, LegBasis.PerBag, 0.60m, Currency.Eur),
            RouteLeg.Of(CostStage.WeighingAndSampling, LegBasis.PerShipment, 140m, Currency.Eur),
            RouteLeg.Interest(CostStage.Finance, Percent.Of(6.25m), days),
            RouteLeg.PerTonneMonth(CostStage.Storage, 9.20m, Currency.Eur, 2),
        ]);
        return route;
    }

    private Route Spot()
    {
        var route = new Route("From the spot warehouse", Place, "Antwerp", "Antwerp");
        route.Share(SharedOver.Fill, Weight.FromKilograms(21_000m), 1, Percent.Of(0m), Percent.Of(110m));
        route.Answer(
        [
            .. CostStages.All.Where(stage => stage < CostStage.HandlingOut).Select(stage => RouteLeg.None(stage)),
            RouteLeg.Of(CostStage.HandlingOut, LegBasis.PerKilogram, 0.018m, Currency.Eur),
            RouteLeg.Of(CostStage.Haulage, LegBasis.PerContainer, 95m, Currency.Eur),
            RouteLeg.None(CostStage.Unloading),
            RouteLeg.None(CostStage.WeighingAndSampling),
            RouteLeg.Interest(CostStage.Finance, Percent.Of(6.25m), 45),
            RouteLeg.None(CostStage.Storage),
        ]);
        return route;
    }
}
