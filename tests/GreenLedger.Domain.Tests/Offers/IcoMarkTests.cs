using GreenLedger.Domain.Offers;

namespace GreenLedger.Domain.Tests.Offers;

public class IcoMarkTests
{
    // Handbook, trade 12: check values 42 and 43; the last three are worked by hand from the form in trade 5.1.
    [Theory]
    [InlineData("002/1961/0978", "002-1961-0978")]
    [InlineData("3-37-1204", "003-0037-1204")]
    [InlineData(" 11 / 5 / 77 ", "011-0005-0077")]
    [InlineData("3-37", null)]
    [InlineData("1234-1-1", null)]
    public void A_mark_is_padded_or_left_as_written(string text, string? expected)
    {
        Assert.Equal(expected, IcoMark.Normalise(text));
    }
}
