using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Tests.Shipments;

public sealed class ContainerNumberTests
{
    // ISO 6346's own example and numbers of general validators (handbook, trade 5.3, check values 45 and 46).
    [Theory]
    [InlineData("CSQU3054383", 3)]
    [InlineData("TEXU3070079", 9)]
    [InlineData("GESU3927660", 0)]
    [InlineData("CSQU0000070", 0)] // remainder 10
    public void A_published_number_has_its_check_digit(string text, int digit)
    {
        var number = ContainerNumber.Of(text);

        Assert.Equal(digit, number.ExpectedCheckDigit);
        Assert.True(number.HasRightCheckDigit);
        Assert.Null(number.Doubt);
    }

    // Handbook, trade, check value 47: both should end in 9.
    [Theory]
    [InlineData("MSKU0123456")]
    [InlineData("TEXU3070070")]
    public void A_wrong_check_digit_is_kept_and_told(string text)
    {
        var number = ContainerNumber.Of(text);

        Assert.Equal(text, number.ToString());
        Assert.False(number.HasRightCheckDigit);
        Assert.Contains("the last digit should be 9", number.Doubt, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("csqu 305438-3")]
    [InlineData(" CSQU 305438 [3]")]
    public void It_is_read_as_doors_and_papers_write_it(string text) => Assert.Equal("CSQU3054383", ContainerNumber.Of(text).ToString());

    [Theory]
    [InlineData("CSQU305438")]
    [InlineData("CSQA3054383")]
    [InlineData("CSQ03054383")]
    [InlineData("CSQU30543834")]
    [InlineData("")]
    public void Another_shape_is_refused_in_a_sentence(string text)
    {
        var refusal = Assert.Throws<RuleBrokenException>(() => ContainerNumber.Of(text));

        Assert.EndsWith("write four letters, the fourth U, J or Z, and seven digits, such as CSQU3054383.", refusal.Message, StringComparison.Ordinal);
    }

    /// <summary>The standard's promise: one digit misread never goes unnoticed, except where the remainder 10 counts as 0.</summary>
    [Fact]
    public void Any_other_last_digit_is_noticed()
    {
        var wrong = Enumerable.Range(0, 10).Where(digit => digit != 3).Select(digit => ContainerNumber.Of($"CSQU305438{digit}"));

        Assert.All(wrong, number => Assert.NotNull(number.Doubt));
    }
}
