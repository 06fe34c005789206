using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Tests.Shipments;

public sealed class UnLocodeTests
{
    // Handbook, trade 5.2, check value 49.
    [Theory]
    [InlineData("BRSSZ", "BRSSZ", "BR")]
    [InlineData("DEHAM", "DEHAM", "DE")]
    [InlineData("nl rtm", "NLRTM", "NL")]
    [InlineData("US2NY", "US2NY", "US")]
    public void A_place_has_its_country_and_three_signs(string text, string code, string country)
    {
        var place = UnLocode.Of(text);

        Assert.Equal((code, country), (place.ToString(), place.Country));
    }

    [Theory]
    [InlineData("BR0SZ")]
    [InlineData("XX123")]
    [InlineData("XXHAM")]
    [InlineData("ZZHAM")]
    [InlineData("Hamburg")]
    [InlineData("DE-HAM")]
    [InlineData(null)]
    public void Another_shape_is_refused_in_a_sentence(string? text)
    {
        var refusal = Assert.Throws<RuleBrokenException>(() => UnLocode.Of(text));

        Assert.Contains("such as DEHAM for Hamburg", refusal.Message, StringComparison.Ordinal);
    }
}
