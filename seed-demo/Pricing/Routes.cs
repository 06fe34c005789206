using System.Globalization;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.SeedDemo.Pricing;

/// <summary>
/// Ways to the warehouse in Antwerp: one from each port of loading, one that serves neighbours through a shared port,
/// and two from spot warehouses. Places are real, amounts are invented in the order of size of 2026.
/// </summary>
internal static class Routes
{
    private const string Warehouse = "Antwerp / BEANR";

    // Port of loading | country, empty for any | container kg | freight USD | days of finance | weight loss % | inland USD a container
    private const string Ports = """
        Santos / BRSSZ|BR|19200|1650|85|0.3|520
        Buenaventura / COBUN|CO|19250|2150|80|0.3|780
        Cartagena / COCTG|CO|19250|1900|75|0.3|930
        Djibouti / DJJIB|ET|19200|2350|95|0.4|1450
        Mombasa / KEMBA||19200|2250|90|0.4|880
        Dar es Salaam / TZDAR||19200|2300|95|0.4|1650
        Puerto Quetzal / GTPRQ|GT|18975|2050|80|0.3|610
        Puerto Cortes / HNPCR|HN|18975|1850|75|0.3|560
        Moin / CRMOB|CR|18975|1800|75|0.3|480
        Corinto / NICIO|NI|18975|2300|85|0.3|590
        Acajutla / SVAQJ|SV|18975|2200|80|0.3|420
        Callao / PECLL|PE|18975|2150|85|0.3|870
        Belawan / IDBLW|ID|19200|2450|95|0.5|540
        Ho Chi Minh City / VNSGN|VN|21000|2350|90|0.4|450
        Lae / PGLAE|PG|19200|3100|105|0.5|690
        Balboa / PABLB|PA|18000|2050|80|0.3|640
        """;

    public static IReadOnlyList<Route> All() =>
    [
        .. Ports.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(FromPort),
        Spot("Antwerp spot warehouse", "Antwerp", 18m, 95m),
        Spot("Hamburg spot warehouse", "Hamburg / DEHAM", 24m, 1_150m),
    ];

    private static Route FromPort(string line)
    {
        var parts = line.Split('|');
        var route = new Route($"{parts[0].Split(" / ")[0]} to Antwerp", parts[0], Warehouse, Warehouse, parts[1]);
        route.Share(SharedOver.Fill, Weight.FromKilograms(Number(parts[2])), 1, Percent.Of(Number(parts[5])), Percent.Of(110m));
        route.Answer(
        [
            RouteLeg.Included(CostStage.Packing),
            RouteLeg.Of(CostStage.OriginLoading, LegBasis.PerBag, 0.35m, Currency.Usd),
            RouteLeg.Of(CostStage.InlandCarriage, LegBasis.PerContainer, Number(parts[6]), Currency.Usd),
            RouteLeg.Of(CostStage.ExportClearance, LegBasis.PerShipment, 180m, Currency.Usd),
            RouteLeg.Of(CostStage.OriginTerminal, LegBasis.PerContainer, 260m, Currency.Usd),
            RouteLeg.Included(CostStage.OnBoard),
            RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, Number(parts[3]), Currency.Usd, "Ocean freight"),
            RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, 210m, Currency.Usd, "Bunker and emission surcharges"),
            RouteLeg.Share(CostStage.Insurance, LegBasis.PercentOfCif, Percent.Of(0.28m)),
            RouteLeg.Of(CostStage.DestinationTerminal, LegBasis.PerContainer, 268m, Currency.Eur),
            RouteLeg.Of(CostStage.CarrierDocuments, LegBasis.PerShipment, 95m, Currency.Eur, "Bill of lading and agency"),
            RouteLeg.Of(CostStage.ImportClearance, LegBasis.PerShipment, 115m, Currency.Eur),
            RouteLeg.Of(CostStage.Inspection, LegBasis.PerShipment, 85m, Currency.Eur),
            RouteLeg.None(CostStage.Duty, "Duty: green coffee is free"),
            RouteLeg.None(CostStage.HandlingOut),
            RouteLeg.Of(CostStage.Haulage, LegBasis.PerContainer, 325m, Currency.Eur, "Haulage from the terminal"),
            RouteLeg.Of(CostStage.Unloading, LegBasis.PerContainer, 240m, Currency.Eur),
            RouteLeg.Of(CostStage.WeighingAndSampling, LegBasis.PerShipment, 140m, Currency.Eur),
            RouteLeg.Interest(CostStage.Finance, Percent.Of(6.25m), (int)Number(parts[4])),
            RouteLeg.PerTonneMonth(CostStage.Storage, 9.20m, Currency.Eur, 2),
        ]);
        return route;
    }

    /// <summary>Bought where it lies in Europe: nothing before the seller's warehouse is the buyer's.</summary>
    private static Route Spot(string name, string from, decimal handlingPerTonne, decimal haulage)
    {
        var route = new Route(name, from, Warehouse, Warehouse);
        route.Share(SharedOver.Fill, Weight.FromKilograms(21_000), 1, Percent.Of(0m), Percent.Of(110m));
        route.Answer(
        [
            .. CostStages.All.Where(stage => stage < CostStage.HandlingOut).Select(stage => RouteLeg.None(stage)),
            RouteLeg.Of(CostStage.HandlingOut, LegBasis.PerKilogram, handlingPerTonne / 1000m, Currency.Eur),
            RouteLeg.Of(CostStage.Haulage, LegBasis.PerContainer, haulage, Currency.Eur, "Lorry to our warehouse"),
            RouteLeg.Of(CostStage.Unloading, LegBasis.PerBag, 0.60m, Currency.Eur),
            RouteLeg.Of(CostStage.WeighingAndSampling, LegBasis.PerShipment, 60m, Currency.Eur),
            RouteLeg.Interest(CostStage.Finance, Percent.Of(6.25m), 45),
            RouteLeg.PerTonneMonth(CostStage.Storage, 9.20m, Currency.Eur, 1),
        ]);
        return route;
    }

    private static decimal Number(string text) => decimal.Parse(text, CultureInfo.InvariantCulture);
}
