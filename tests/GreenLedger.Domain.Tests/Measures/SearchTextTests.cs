using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Tests.Measures;

public class SearchTextTests
{
    // Worked by hand: lower case, marks off, other signs than letters and digits made one space.
    [Theory]
    [InlineData("Sítio Olho d'Água", "sitio olho d agua")]
    [InlineData("  Größe / Menge (kg) ", "grosse menge kg")]
    [InlineData("VENDIDO", "vendido")]
    [InlineData("Łódź & Øre", "lodz ore")]
    [InlineData("", "")]
    [InlineData("---", "")]
    public void Text_is_folded_for_search(string text, string expected)
    {
        Assert.Equal(expected, SearchText.Of(text));
    }

    [Fact]
    public void Parts_are_joined_by_one_space_and_missing_ones_leave_none()
    {
        Assert.Equal("sc 1101 huila co", SearchText.Of("SC-1101", null, "Huila", "", "CO"));
    }
}
