using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Tests.Pricing;

public sealed class ExchangeRatesTests
{
    private static readonly DateOnly Friday = new(2026, 11, 20);
    private static readonly DateOnly Sunday = new(2026, 11, 22);

    [Fact] // handbook, trade 12 no. 73
    public void Ten_thousand_dollars_in_euros_and_in_pounds()
    {
        var dollars = Money.Of(10_000m, Currency.Usd);

        Assert.Equal(Money.Of(8_620.69m, Currency.Eur), Find(Currency.Usd, Currency.Eur).Of(dollars));
        Assert.Equal(Money.Of(7_500m, Currency.Gbp), Find(Currency.Usd, Currency.Gbp).Of(dollars));
    }

    [Fact] // handbook, trade 9.4: USD→GBP 0.75, GBP→USD 1.333333: the inverse of the unrounded rate
    public void A_cross_rate_and_its_inverse_are_not_rounded_on_the_way()
    {
        Assert.Equal(0.75m, Find(Currency.Usd, Currency.Gbp).Rate);
        Assert.Equal(1.333333m, Math.Round(Find(Currency.Gbp, Currency.Usd).Rate, 6));
        Assert.Equal(10_000m, Find(Currency.Gbp, Currency.Usd).Of(7_500m));
    }

    [Fact] // handbook, trade 12 no. 75
    public void A_dollar_in_reais() => Assert.Equal(5.387931m, Math.Round(Find(Currency.Usd, Currency.Of("BRL")).Rate, 6));

    [Fact] // handbook, trade 12 no. 74
    public void A_rate_asked_for_a_Sunday_is_Fridays_dated_Friday()
    {
        var rates = new ExchangeRates([PricingDemo.Rate(Currency.Usd, 1.15m, Friday.AddDays(-1)), PricingDemo.Rate(Currency.Usd, 1.16m, Friday), PricingDemo.Rate(Currency.Usd, 1.17m, Sunday.AddDays(1))]);

        var conversion = rates.Find(Currency.Usd, Currency.Eur, Sunday)!;

        Assert.Equal((1.16m, Friday), (conversion.FromRate!.UnitsPerEuro, conversion.On));
        Assert.Equal("1 EUR = 1.16 USD (20 Nov 2026)", conversion.Words());
    }

    [Fact]
    public void A_cross_rate_is_as_old_as_the_older_of_its_two()
    {
        var rates = new ExchangeRates([PricingDemo.Rate(Currency.Usd, 1.16m, Sunday), PricingDemo.Rate(Currency.Gbp, 0.87m, Friday)]);

        Assert.Equal(Friday, rates.Find(Currency.Usd, Currency.Gbp, Sunday)!.On);
    }

    [Fact]
    public void Before_its_first_day_a_currency_has_no_rate()
    {
        Assert.Null(PricingDemo.Rates.Find(Currency.Usd, Currency.Eur, new DateOnly(2020, 1, 1)));
        Assert.Equal(Currency.Of("KES"), PricingDemo.Rates.Missing(Currency.Usd, Currency.Of("KES"), PricingDemo.Today));
    }

    [Fact] // handbook, trade 9.4: customs uses its own monthly rate, a separate type
    public void Customs_rates_never_stand_in_for_those_of_the_market()
    {
        var customs = new ExchangeRate(Currency.Usd, Friday, 1.10m, "customs", null, PricingDemo.Now, RateKind.Customs);

        Assert.Null(new ExchangeRates([customs]).Find(Currency.Usd, Currency.Eur, Sunday));
        Assert.NotNull(new ExchangeRates([customs], RateKind.Customs).Find(Currency.Usd, Currency.Eur, Sunday));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1.16)]
    [InlineData(1.000000001)]
    public void A_rate_that_is_none_is_refused(double rate) =>
        Assert.Throws<RuleBrokenException>(() => PricingDemo.Rate(Currency.Usd, (decimal)rate));

    [Fact]
    public void The_euro_has_no_entry() => Assert.Throws<RuleBrokenException>(() => PricingDemo.Rate(Currency.Eur, 1m));

    private static Conversion Find(Currency from, Currency to) => PricingDemo.Rates.Find(from, to, PricingDemo.Today)!;
}
