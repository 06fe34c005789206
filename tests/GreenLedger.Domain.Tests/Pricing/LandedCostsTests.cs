using CsCheck;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Pricing;

public sealed class LandedCostsTests
{
    [Fact]
    public void A_missing_exchange_rate_is_named_with_what_needs_it()
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel, RouteLeg.Of(CostStage.Haulage, LegBasis.PerContainer, 640m, Currency.Of("CHF")));

        var problem = Assert.Single(cost.Problems);
        Assert.Equal((CostGap.ExchangeRate, CostStage.Haulage), (problem.Gap, problem.Stage));
        Assert.Contains("no exchange rate for CHF on or before 25 Nov 2026, needed for Haulage", problem.Message);
        Assert.Null(cost.Total);
        Assert.Null(cost.PerKilogram);
    }

    [Fact]
    public void A_missing_quote_is_named_by_its_month()
    {
        var may = FuturesMonth.Of(FuturesMarket.Arabica, 2027, 5);

        var cost = PricingDemo.Cost(ExampleD.Parcel with { Price = null, Differential = Differential.Of(may, 35m) });

        Assert.Equal(CostGap.FuturesQuote, Assert.Single(cost.Problems).Gap);
        Assert.Contains("no futures quote for KCK27", cost.Problems[0].Message);
        Assert.Empty(cost.Lines);
    }

    [Fact]
    public void Each_open_stage_that_the_buyer_pays_is_named_and_the_sellers_are_not()
    {
        var route = ExampleD.Route();
        route.Answer(route.Legs.Where(leg => leg.Stage is not (CostStage.Packing or CostStage.Freight or CostStage.Duty)).ToList());

        var cost = PricingDemo.Costs(route).Of(ExampleD.Parcel);

        Assert.Equal([CostStage.Freight, CostStage.Duty], cost.Problems.Select(problem => problem.Stage!.Value));
        Assert.All(cost.Problems, problem => Assert.Contains("does not answer", problem.Message));
        Assert.Null(cost.Total);
    }

    [Fact]
    public void What_an_offer_lacks_is_named_all_at_once()
    {
        var cost = PricingDemo.Cost(new Parcel(null, null, null, null, "HN", Weight.Zero, null));

        Assert.Equal([CostGap.Price, CostGap.Quantity, CostGap.Delivery], cost.Problems.Select(problem => problem.Gap));
    }

    [Fact]
    public void A_leg_by_the_bag_needs_the_bags()
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel with { Bags = null }, RouteLeg.Of(CostStage.Unloading, LegBasis.PerBag, 0.8m, Currency.Eur));

        Assert.Equal((CostGap.Bags, CostStage.Unloading), (cost.Problems.Single().Gap, cost.Problems.Single().Stage));
    }

    [Fact]
    public void Coffee_that_no_route_serves_says_so()
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel with { OriginCountry = "KE", Place = "Mombasa" });

        Assert.Equal(CostGap.Route, Assert.Single(cost.Problems).Gap);
        Assert.Contains("No route serves coffee from KE FOB Mombasa", cost.Problems[0].Message);
    }

    [Fact]
    public void A_discount_below_nothing_is_no_price()
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel with { Price = null, Differential = Differential.Of(ExampleD.March, -290m) });

        Assert.Equal(CostGap.Price, Assert.Single(cost.Problems).Gap);
    }

    [Theory]
    [InlineData("Santos", "BR", "Brazil by Santos")]
    [InlineData("santos, Brazil", "BR", "Brazil by Santos")]
    [InlineData("BRPNG", "BR", "Brazil by Paranaguá")]
    [InlineData("PARANAGUA", "BR", "Brazil by Paranaguá")]
    [InlineData("Vitória", "BR", "Brazil by Paranaguá")]
    [InlineData("Djibouti", "ET", "Any origin")]
    [InlineData("Santos", null, "Brazil by Santos")]
    [InlineData("Djibouti", null, "Any origin")]
    public void A_parcel_goes_by_its_port_then_its_country_then_any_route(string place, string? country, string name)
    {
        var costs = PricingDemo.Costs(
            new Route("Any origin", "any port", "Hamburg", "Hafen warehouse"),
            new Route("Brazil by Paranaguá", "Paranaguá / BRPNG", "Hamburg", "Hafen warehouse", "BR"),
            new Route("Brazil by Santos", "Santos / BRSSZ", "Hamburg", "Hafen warehouse", "BR"));

        Assert.Equal(name, costs.RouteFor(ExampleD.Parcel with { Place = place, OriginCountry = country })!.Name);
    }

    [Fact]
    public void A_route_that_is_put_away_serves_nobody()
    {
        var route = ExampleD.Route();
        route.PutAway();

        Assert.Equal(CostGap.Route, PricingDemo.Costs(route).Of(ExampleD.Parcel).Problems.Single().Gap);
    }

    [Theory] // handbook, trade 3.1: FCA at a terminal or at the mill, CPT to a port or inland
    [InlineData(Incoterm.Fca, "Puerto Cortés", DeliveryPlace.OriginTerminal, false)]
    [InlineData(Incoterm.Fca, "Santa Bárbara", DeliveryPlace.Mill, true)]
    [InlineData(Incoterm.Cpt, "Hamburg", DeliveryPlace.PortOfDestination, false)]
    [InlineData(Incoterm.Cpt, "Hafen warehouse", DeliveryPlace.Inland, false)]
    [InlineData(Incoterm.Cpt, "Bremen", DeliveryPlace.PortOfDestination, true)]
    [InlineData(Incoterm.Fob, "Puerto Cortés", DeliveryPlace.PortOfLoading, false)]
    public void Where_the_named_place_lies_is_told_from_the_route_or_said_to_be_assumed(Incoterm delivery, string place, DeliveryPlace kind, bool assumed)
    {
        var cost = PricingDemo.Cost(ExampleD.Parcel with { Delivery = delivery, Place = place });

        Assert.Equal(kind, cost.Split!.Place);
        Assert.Equal(assumed, cost.Assumptions.Count == 1);
    }

    [Fact] // worked by hand: 100,000 GBP + 1,160 USD × 0.75 = 100,870 GBP, of which 10 %
    public void Legs_in_other_currencies_enter_cif_at_their_cross_rate()
    {
        var parcel = ExampleD.Parcel with { Price = PricePerWeight.Of(100m, Currency.Gbp, PriceUnit.Kilogram), Quantity = Weight.FromKilograms(1_000) };

        var cost = PricingDemo.Cost(
            parcel,
            RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, 1_160m, Currency.Usd),
            RouteLeg.None(CostStage.Insurance),
            RouteLeg.Share(CostStage.Duty, LegBasis.PercentOfCif, Percent.Of(10m)));

        Assert.Equal(Money.Of(10_087m, Currency.Gbp), cost.Lines.Single(line => line.Stage == CostStage.Duty).Original);
    }

    [Fact]
    public void The_parts_shown_add_up_to_the_total_shown() =>
        Gen.Select(Gen.Decimal[0.5m, 40m], Gen.Int[1, 60_000], Gen.Enum<Incoterm>(), Gen.Decimal[0m, 5_000m].Array[4], Gen.Int[0, 60_000])
            .Sample((price, kilograms, delivery, amounts, interest) =>
            {
                var cost = Any(price, kilograms, delivery, amounts, interest);

                Assert.Empty(cost.Problems);
                Assert.Equal(cost.Total!.Value.MinorUnits, cost.Lines.Sum(line => line.Amount.MinorUnits));
                Assert.Equal(cost.ShownPerKilogram, cost.Lines.Sum(line => line.PerKilogram));
                Assert.All(cost.Lines, line => Assert.True(Math.Abs(line.PerKilogram - (line.Amount.Amount / cost.Landed.Kilograms)) < 0.0002m));
                Assert.All(cost.Lines.Where(line => !line.Counts), line => Assert.Equal(0, line.Amount.MinorUnits));
            });

    [Fact]
    public void Costs_made_ready_once_are_known_for_any_number_of_parcels()
    {
        var costs = PricingDemo.Costs(ExampleD.Route());
        var parcel = ExampleD.Parcel;

        var known = Enumerable.Range(1, 2_000).Count(bags => costs.Of(parcel with { Bags = bags, Quantity = Weight.FromKilograms(69) * bags }).IsKnown);

        Assert.Equal(2_000, known);
    }

    [Theory]
    [InlineData(LegBasis.PerContainer)]
    [InlineData(LegBasis.PerShipment)]
    public void Half_a_cent_of_a_share_is_rounded_up(LegBasis basis)
    {
        var route = ExampleD.Route(RouteLeg.Of(CostStage.Haulage, basis, 210m, Currency.Eur));
        route.Share(SharedOver.Fill, Weight.FromKilograms(19_200), 1, Percent.Of(0.3m), Percent.Of(110m));

        var cost = PricingDemo.Costs(route).Of(ExampleD.Parcel with { Quantity = Weight.FromKilograms(16), Bags = 1 });

        // Worked by hand: 210 EUR × 16 kg ÷ 19,200 kg = 0.175 EUR.
        Assert.Equal(Money.Of(0.18m, Currency.Eur), cost.Lines.Single(line => line.Stage == CostStage.Haulage).Amount);
    }

    private static LandedCost Any(decimal price, int kilograms, Incoterm delivery, decimal[] amounts, int interest)
    {
        var parcel = new Parcel(
            PricePerWeight.Of(Math.Round(price, 4), Currency.Usd, PriceUnit.Kilogram), null, delivery, null, "HN", Weight.FromKilograms(kilograms), 1 + (kilograms / 69));
        var cents = amounts.Select(amount => Math.Round(amount, 2)).ToArray();
        return PricingDemo.Cost(
            parcel,
            RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, cents[0], Currency.Usd),
            RouteLeg.Of(CostStage.Haulage, LegBasis.PerShipment, cents[1], Currency.Gbp),
            RouteLeg.Of(CostStage.Unloading, LegBasis.PerBag, cents[2] / 1000m, Currency.Eur),
            RouteLeg.Of(CostStage.HandlingOut, LegBasis.PerKilogram, cents[3] / 10_000m, Currency.Of("BRL")),
            RouteLeg.Interest(CostStage.Finance, Percent.Of(interest / 10_000m), 65));
    }
}
