using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Pricing;

public sealed class LandedCostTests
{
    [Fact] // handbook, trade 3.3 Example D and 12 no. 29
    public void Fob_to_landed_comes_out_as_in_the_handbook()
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel);

        Assert.Empty(cost.Problems);
        Assert.Equal(Money.Of(122_557.80m, Currency.Eur), cost.Total);
        Assert.Equal(18_918.075m, cost.Landed.Kilograms);
        Assert.Equal(6.4783m, cost.ShownPerKilogram);
        Assert.Equal(3.4087m, Math.Round(cost.PerKilogram!.Value * 1.16m * 0.45359237m, 4));
        Assert.Equal(7.5149m, Math.Round(cost.PerKilogram.Value * 1.16m, 4));
    }

    [Theory] // handbook, trade 3.3 Example D, line by line
    [InlineData("Coffee", "134554.93 USD", "115995.63 EUR")]
    [InlineData("Ocean freight", "3250.00 USD", "2801.72 EUR")]
    [InlineData("Insurance", "532.60 USD", "459.14 EUR")]
    [InlineData("Finance", "1822.10 USD", "1570.78 EUR")]
    [InlineData("Terminal at destination", "285.00 EUR", "285.00 EUR")]
    [InlineData("Duty and import taxes", "0.00 USD", "0.00 EUR")]
    [InlineData("Storage", "360.53 EUR", "360.53 EUR")]
    public void Each_line_is_rounded_once_in_its_own_currency_and_once_in_the_house(string name, string original, string amount)
    {
        var line = PricingDemo.Cost(ExampleD.Parcel).Lines.Single(line => line.Name == name);

        Assert.Equal((original, amount), (line.Original.ToString(), line.Amount.ToString()));
    }

    [Fact] // handbook, trade 12 no. 27
    public void Cif_contains_its_own_premium()
    {
        var parcel = ExampleD.Parcel with { Price = PricePerWeight.Of(96.75m, Currency.Usd, PriceUnit.Kilogram), Quantity = Weight.FromKilograms(1_000), Bags = 10 };

        var cost = PricingDemo.Cost(parcel, RouteLeg.Share(CostStage.Insurance, LegBasis.PercentOfCif, Percent.Of(0.30m)));

        Assert.Equal(331.09m, Line(cost, CostStage.Insurance).Original.Amount);
        Assert.Contains("100,331.09 USD", Line(cost, CostStage.Insurance).Arithmetic);
    }

    [Theory] // handbook, trade 12 no. 28
    [InlineData(InterestYear.Act360, 1_500.00)]
    [InlineData(InterestYear.Act365, 1_479.45)]
    [InlineData(InterestYear.ByCurrency, 1_500.00)]
    public void Interest_runs_by_days_of_the_chosen_year(InterestYear year, double interest)
    {
        var parcel = ExampleD.Parcel with { Price = PricePerWeight.Of(100m, Currency.Usd, PriceUnit.Kilogram), Quantity = Weight.FromKilograms(1_000) };

        var cost = PricingDemo.Cost(parcel, RouteLeg.Interest(CostStage.Finance, Percent.Of(6m), 90, year));

        Assert.Equal((decimal)interest, Line(cost, CostStage.Finance).Original.Amount);
    }

    [Fact] // handbook, trade 3.3: ACT/365 for GBP
    public void Interest_on_a_price_in_sterling_has_a_year_of_365_days()
    {
        var parcel = ExampleD.Parcel with { Price = PricePerWeight.Of(100m, Currency.Gbp, PriceUnit.Kilogram), Quantity = Weight.FromKilograms(1_000) };

        var cost = PricingDemo.Cost(parcel, RouteLeg.Interest(CostStage.Finance, Percent.Of(6m), 90));

        Assert.Equal(Money.Of(1_479.45m, Currency.Gbp), Line(cost, CostStage.Finance).Original);
    }

    [Fact] // handbook, trade 2.3 Example A: 286.65 + 35.00 = 321.65 c/lb, then Example D
    public void A_differential_is_resolved_by_the_quote_of_its_month()
    {
        var parcel = ExampleD.Parcel with { Price = null, Differential = Differential.Of(ExampleD.March, 35m) };

        var cost = PricingDemo.Cost(parcel);

        Assert.Equal(Money.Of(122_557.80m, Currency.Eur), cost.Total);
        Assert.Equal(new DateOnly(2026, 11, 24), cost.Quote!.On);
        Assert.Contains("KCH27 286.65 of 24 Nov 2026 + 35 US cents/lb", cost.Lines[0].Arithmetic);
    }

    [Fact] // worked by hand: 3,250 × 18,975 / 19,200 = 3,211.914… and 95 × 18,975 / 38,400 = 46.943…
    public void Container_and_shipment_costs_can_be_shared_over_the_fill()
    {
        var route = ExampleD.Route();
        route.Share(SharedOver.Fill, Weight.FromKilograms(19_200), 2, Percent.Of(0.3m), Percent.Of(110m));

        var cost = PricingDemo.Costs(route).Of(ExampleD.Parcel);

        Assert.Equal(3_211.91m, Line(cost, CostStage.Freight).Original.Amount);
        Assert.Equal(46.94m, Line(cost, CostStage.CarrierDocuments).Original.Amount);
        Assert.Contains("18,975 kg of a fill of 19,200 kg", Line(cost, CostStage.Freight).Arithmetic);
    }

    [Fact] // worked by hand: 40,000 kg at 19,200 kg begin three containers
    public void A_quantity_alone_pays_for_every_container_it_begins()
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel with { Quantity = Weight.FromKilograms(40_000) });

        Assert.Equal(9_750m, Line(cost, CostStage.Freight).Original.Amount);
        Assert.Equal(95m, Line(cost, CostStage.CarrierDocuments).Original.Amount);
    }

    [Fact] // worked by hand: 275 bags × 0.25 = 68.75 and 18,975 kg × 0.04 = 759.00
    public void Ex_works_adds_the_legs_at_origin()
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel with { Delivery = Incoterm.Exw, Place = "mill" });

        Assert.Equal(68.75m, Line(cost, CostStage.OriginLoading).Original.Amount);
        Assert.Equal(759m, Line(cost, CostStage.InlandCarriage).Original.Amount);
    }

    [Fact] // handbook, trade 3.3: duty by the CIF value; worked by hand: 8.3 % of 138,337.53 = 11,482.0149…
    public void Duty_is_taken_of_cif()
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel, RouteLeg.Share(CostStage.Duty, LegBasis.PercentOfCif, Percent.Of(8.3m)));

        Assert.Equal(Money.Of(11_482.01m, Currency.Usd), Line(cost, CostStage.Duty).Original);
    }

    [Fact] // worked by hand: 122,557.80 − 1,570.78 − 360.53
    public void The_accounting_cost_leaves_out_finance_and_storage() =>
        Assert.Equal(Money.Of(120_626.49m, Currency.Eur), PricingDemo.Cost(ExampleD.Parcel).AccountingTotal);

    [Fact]
    public void Every_stage_has_its_line_and_the_sellers_say_so()
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel with { Delivery = Incoterm.Cif, Place = "Hamburg" });

        Assert.Equal(CostStages.All, cost.Lines.Skip(1).Select(line => line.Stage!.Value));
        Assert.Equal("the seller pays under CIF", Line(cost, CostStage.Freight).Arithmetic);
        Assert.Equal(0m, Line(cost, CostStage.Freight).Amount.Amount);
        Assert.False(Line(cost, CostStage.Insurance).Counts);
    }

    [Fact]
    public void Spot_coffee_comes_by_the_route_from_its_warehouse_wherever_it_grew()
    {
        var spot = new Route("From Bremen", "Bremen", "Hamburg / DEHAM", "Hafen warehouse");
        var parcel = ExampleD.Parcel with { Delivery = Incoterm.ExWarehouse, Place = "Bremen" };

        var route = PricingDemo.Costs(ExampleD.Route(), spot).RouteFor(parcel);

        Assert.Equal(spot.Id, route?.Id);
    }

    [Fact] // handbook, trade 3.2: from DAP on, loss of weight is not the buyer's
    public void Weight_is_lost_on_the_buyers_way_only()
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel with { Delivery = Incoterm.Dap, Place = "Hafen warehouse" });

        Assert.Equal(18_975m, cost.Landed.Kilograms);
    }

    private static LandedCostLine Line(LandedCost cost, CostStage stage) => cost.Lines.Single(line => line.Stage == stage);
}
