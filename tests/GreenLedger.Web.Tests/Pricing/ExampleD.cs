using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Web.Tests.Pricing;

/// <summary>The route of the handbook's Example D (trade 3.3); one full container is the parcel itself.</summary>
internal static class ExampleD
{
    public static Route Route()
    {
        var route = new Route("Honduras to Hamburg", "Puerto Cortés / HNPCR", "Hamburg / DEHAM", "Hafen warehouse", "HN");
        route.Share(SharedOver.Quantity, Weight.FromKilograms(19_200), 1, Percent.Of(0.3m), Percent.Of(110m));
        route.Answer(
        [
            RouteLeg.None(CostStage.Packing),
            RouteLeg.None(CostStage.OriginLoading),
            RouteLeg.None(CostStage.InlandCarriage),
            RouteLeg.None(CostStage.ExportClearance),
            RouteLeg.None(CostStage.OriginTerminal),
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
        ]);
        return route;
    }
}
