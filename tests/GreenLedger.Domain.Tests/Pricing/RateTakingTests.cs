using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Tests.Pricing;

public sealed class RateTakingTests
{
    private static readonly DateOnly Day = new(2026, 11, 24);

    private static readonly RateLine[] Lines = [new("USD", Day, 1.16m), new("GBP", Day, 0.87m), new("HRK", Day, 7.53m), new("EUR", Day, 1m)];

    [Fact]
    public void New_rates_are_added_and_closed_currencies_left_out_by_name()
    {
        var taking = Take(Lines, []);

        Assert.Equal([Currency.Usd, Currency.Gbp], taking.Added.Select(rate => rate.Currency));
        Assert.Equal(["EUR", "HRK"], taking.UnknownCodes);
    }

    [Fact]
    public void The_same_file_twice_changes_nothing()
    {
        var again = Take(Lines, Take(Lines, []).Added);

        Assert.Equal((0, 0, 2), (again.Added.Count, again.Corrected, again.Unchanged));
    }

    [Fact]
    public void A_figure_that_differs_is_put_right_with_its_source()
    {
        var stored = PricingDemo.Rate(Currency.Usd, 1.61m, Day);

        var taking = Take(Lines, [stored]);

        Assert.Equal(1, taking.Corrected);
        Assert.Equal((1.16m, "rates.xml"), (stored.UnitsPerEuro, stored.Source));
    }

    private static RateTaking Take(IEnumerable<RateLine> lines, IEnumerable<ExchangeRate> stored) =>
        RateTaking.Of(lines, stored, RateKind.Market, "rates.xml", null, PricingDemo.Now);
}
