using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public sealed class CurrencyTests
{
    [Fact]
    public void Keeps_the_promises_of_a_measure() =>
        MeasureContract.Holds(Currency.Of("BRL"), Currency.Eur, Currency.Gbp, Currency.Of("JPY"), Currency.Usd);

    [Fact]
    public void A_code_that_is_no_currency_is_not_read() =>
        MeasureContract.IsNotRead<Currency>(null, "", "US", "USDX", "XYZ", "$");

    [Theory] // ISO 4217, from memory (handbook, trade 1.4)
    [InlineData("EUR", 2)]
    [InlineData("COP", 2)]
    [InlineData("VND", 0)]
    [InlineData("UGX", 0)]
    [InlineData("KWD", 3)]
    public void A_currency_has_its_decimals(string code, int decimals) =>
        Assert.Equal(decimals, Currency.Of(code).Decimals);

    [Fact]
    public void A_code_is_read_in_any_case_and_every_known_code_is_read()
    {
        Assert.Equal(Currency.Usd, Currency.Of(" usd "));
        Assert.All(Currency.Codes, code => Assert.Equal(code, Currency.Of(code).Code));
    }

    [Fact]
    public void An_unknown_code_is_refused_in_a_sentence()
    {
        var refusal = Assert.Throws<RuleBrokenException>(() => Currency.Of("QQQ"));

        Assert.Contains("'QQQ'", refusal.Message);
    }
}
