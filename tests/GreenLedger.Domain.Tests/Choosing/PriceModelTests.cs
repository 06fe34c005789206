using GreenLedger.Domain.Choosing;

namespace GreenLedger.Domain.Tests.Choosing;

public sealed class PriceModelTests
{
    private static readonly PastOffer[] RunningExample =
    [
        new(86.50, "washed", "CO", 8.80), new(85.25, "washed", "CO", 7.60), new(84.00, "washed", "CO", 6.90),
        new(84.00, "washed", "CO", 7.20), new(87.50, "washed", "CO", 11.50),
    ];

    private static readonly PastOffer[] TenOffers =
    [
        new(84.25, "washed", "CO", 6.90), new(85.50, "natural", "CO", 7.80), new(86.00, "washed", "ET", 8.40),
        new(87.25, "natural", "ET", 9.90), new(83.50, "washed", "CO", 6.40), new(84.75, "washed", "CO", 7.20),
        new(86.50, "natural", "ET", 8.70), new(88.00, "honey", "ET", 11.20), new(85.00, "honey", "CO", 7.40),
        new(86.25, "natural", "CO", 8.60),
    ];

    /// <summary>Handbook quality.md section 9, value 28, and section 5: 13.65 % for each point.</summary>
    [Fact]
    public void The_running_example_has_the_line_of_the_handbook()
    {
        var model = PriceModel.Of(RunningExample, 3);

        Assert.Equal(0.1279107378, model.PerPoint, 10);
        Assert.Equal(-8.8198026572, model.Intercept, 8);
        Assert.Equal(0.1365, Math.Exp(model.PerPoint) - 1, 4);
    }

    /// <summary>R² of the same fit in R: tests/R/choosing.R, 4.</summary>
    [Fact]
    public void It_says_how_many_offers_it_rests_on_and_how_much_they_explain()
    {
        var model = PriceModel.Of(RunningExample, 3);

        Assert.Equal(5, model.Offers);
        Assert.Equal(0.9101419206, model.RSquared!.Value, 9);
    }

    /// <summary>Handbook quality.md section 5: residuals of ln(price).</summary>
    [Theory]
    [InlineData(0, -0.069724)]
    [InlineData(1, -0.056439)]
    [InlineData(2, 0.006822)]
    [InlineData(3, 0.049382)]
    [InlineData(4, 0.069960)]
    public void A_price_lies_as_far_off_as_the_handbook_says(int lot, double residual)
    {
        var offer = RunningExample[lot];

        var check = PriceModel.Of(RunningExample, 3).Check(offer.Score, offer.Process, offer.Origin, offer.CostPerKilogram);

        Assert.Equal(residual, Math.Log(1 + check.Difference!.Value), 6);
    }

    /// <summary>The same fit in R: tests/R/choosing.R, 5.</summary>
    [Fact]
    public void Process_and_origin_enter_the_prediction()
    {
        var model = PriceModel.Of(TenOffers, 2);

        var check = model.Check(86, "washed", "CO", 9.0);

        Assert.Equal(0.990670322, model.RSquared!.Value, 8);
        Assert.Equal(0.1302491446, model.PerPoint, 9);
        Assert.Equal(8.614904841, check.PredictedPerKilogram!.Value, 8);
        Assert.Equal(9.0 / 8.614904841 - 1, check.Difference!.Value, 8);
    }

    [Fact]
    public void Too_few_offers_are_said_to_be_too_few()
    {
        var model = PriceModel.Of(RunningExample.Take(4), 1);

        Assert.Equal("4 past offers with a score and a landed cost: too few to predict from (5 are needed).", model.WhyNot);
        Assert.Null(model.Check(85, "washed", "CO", 8).PredictedPerKilogram);
    }

    [Fact]
    public void Offers_of_one_score_do_not_say_what_a_point_is_worth()
    {
        var model = PriceModel.Of(Enumerable.Range(0, 9).Select(i => new PastOffer(85, "washed", "CO", 7 + i)), 1);

        Assert.Equal("All past offers have the same score, so they do not say what a point is worth.", model.WhyNot);
    }

    [Fact]
    public void Processes_that_each_come_from_one_origin_cannot_be_told_apart()
    {
        var offers = Enumerable.Range(0, 12).Select(i => new PastOffer(83 + i % 5, i < 6 ? "washed" : "natural", i < 6 ? "CO" : "ET", 7 + i * 0.2));

        var model = PriceModel.Of(offers, 3);

        Assert.Equal("In the past offers process and origin cannot be told apart: each process came from origins of its own.", model.WhyNot);
    }

    [Fact]
    public void Nothing_is_predicted_for_an_origin_with_too_few_offers()
    {
        var model = PriceModel.Of([.. RunningExample, new PastOffer(86, "washed", "YE", 20)], 3);

        var check = model.Check(86, "washed", "YE", 20);

        Assert.Null(check.PredictedPerKilogram);
        Assert.Equal("Too few past offers come from YE.", check.WhyNot);
        Assert.Equal(5, model.Offers);
    }
}
