using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;
using GreenLedger.Examples;

namespace GreenLedger.Domain.Tests.Pricing;

public sealed class RouteTests
{
    [Fact]
    public void A_new_route_has_every_stage_open_and_says_which()
    {
        var route = new Route("Peru to Hamburg", "Callao", "Hamburg", "Hafen warehouse", "pe");

        var refusal = Assert.Throws<RuleBrokenException>(route.RequireComplete);

        Assert.Equal(CostStages.All, route.Unanswered);
        Assert.Contains("Main freight", refusal.Message);
        Assert.Equal("PE", route.OriginCountry);
    }

    [Fact]
    public void A_stage_may_have_several_amounts_but_not_an_amount_and_none()
    {
        var route = ExampleD.Route(
            RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, 2_900m, Currency.Usd),
            RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, 350m, Currency.Usd, "Bunker surcharge"));

        Assert.Equal(["Main freight", "Bunker surcharge"], route.Legs.Where(leg => leg.Stage == CostStage.Freight).Select(leg => leg.Name));
        Assert.Throws<RuleBrokenException>(() => route.Answer([RouteLeg.None(CostStage.Freight), RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, 350m, Currency.Usd)]));
    }

    [Fact]
    public void A_share_of_cif_before_cif_is_known_is_refused() =>
        Assert.Throws<RuleBrokenException>(() => RouteLeg.Share(CostStage.Freight, LegBasis.PercentOfCif, Percent.Of(2m)));

    [Fact]
    public void Amounts_rates_and_times_out_of_range_are_refused()
    {
        Assert.Throws<RuleBrokenException>(() => RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, -1m, Currency.Usd));
        Assert.Throws<RuleBrokenException>(() => RouteLeg.Of(CostStage.Freight, LegBasis.PerContainer, 1m, default));
        Assert.Throws<RuleBrokenException>(() => RouteLeg.From(new(CostStage.Freight, LegWay.PerContainer, null, Currency.Usd)));
        Assert.Throws<RuleBrokenException>(() => RouteLeg.From(new(CostStage.Finance, LegWay.Interest, 7.5m)));
        Assert.Throws<RuleBrokenException>(() => RouteLeg.Share(CostStage.Duty, LegBasis.PercentOfValue, Percent.Of(101m)));
        Assert.Throws<RuleBrokenException>(() => RouteLeg.Interest(CostStage.Finance, Percent.Of(7m), -1));
        Assert.Throws<RuleBrokenException>(() => RouteLeg.PerTonneMonth(CostStage.Storage, 9.5m, Currency.Eur, 121));
        Assert.Throws<RuleBrokenException>(() => ExampleD.Route(RouteLeg.Share(CostStage.Insurance, LegBasis.PercentOfCif, Percent.Of(60m))));
    }

    [Fact]
    public void A_fill_of_nothing_is_refused() =>
        Assert.Throws<RuleBrokenException>(() => ExampleD.Route().Share(SharedOver.Fill, Weight.Zero, 1, default, Percent.Of(110m)));

    [Fact]
    public void A_broken_rule_names_the_line_of_the_form_that_it_is_about()
    {
        var refusal = Assert.Throws<RuleBrokenException>(() => RouteLeg.From(new(CostStage.Freight, LegWay.PerContainer, -1m, Currency.Usd), "Legs[6]."));

        Assert.Equal("Legs[6].Figure", refusal.Field);
    }

    [Theory]
    [InlineData(LegWay.Included, null, null, null)]
    [InlineData(LegWay.None, null, null, null)]
    [InlineData(LegWay.PerBag, 0.25, "USD", null)]
    [InlineData(LegWay.PercentOfCif, 0.35, null, null)]
    [InlineData(LegWay.Interest, 7.5, null, 65)]
    [InlineData(LegWay.Interest365, 7.5, null, 65)]
    [InlineData(LegWay.PerTonneMonth, 9.5, "EUR", 2)]
    public void A_leg_is_stated_again_as_it_was(LegWay way, double? figure, string? currency, int? time)
    {
        var line = new LegLine(CostStage.Storage, way, (decimal?)figure, currency is null ? null : Currency.Of(currency), time, "Shed");

        Assert.Equal(line, RouteLeg.From(line).Line);
    }
}
