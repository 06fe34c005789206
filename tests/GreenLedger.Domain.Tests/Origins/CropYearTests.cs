using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Tests.Origins;

public class CropYearTests
{
    // Handbook, trade 5.2: the label is 2026/27; the other spellings are worked by hand.
    [Theory]
    [InlineData("2026/27", "2026/27")]
    [InlineData("Crop 2026-2027", "2026/27")]
    [InlineData("25/26", "2025/26")]
    [InlineData("safra 2026", "2026")]
    [InlineData("2026/29", null)]
    [InlineData("new", null)]
    [InlineData(null, null)]
    public void A_crop_year_is_read_from_its_spellings(string? text, string? expected)
    {
        Assert.Equal(expected, CropYear.Read(text));
    }

    // Handbook, trade 12, check value 44: the coffee year of the International Coffee Organization begins on 1 October.
    [Theory]
    [InlineData("2026-09-30", "2025/26")]
    [InlineData("2026-10-01", "2026/27")]
    public void A_country_without_a_crop_year_of_its_own_goes_by_the_coffee_year(string harvested, string expected)
    {
        Assert.Equal(expected, new Country("XX", "Nowhere").CropYearOf(DateOnly.Parse(harvested, System.Globalization.CultureInfo.InvariantCulture)));
    }
}
