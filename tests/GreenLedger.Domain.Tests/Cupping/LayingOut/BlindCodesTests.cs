using System.Globalization;
using GreenLedger.Domain.Cupping.LayingOut;

namespace GreenLedger.Domain.Tests.Cupping.LayingOut;

public sealed class BlindCodesTests
{
    /// <summary>
    /// Worked by hand: of 900 codes 9 end in two zeros, 9 repeat one digit, 7 count up (123 to 789) and 8 down (210 to 987).
    /// </summary>
    private const int ThreeDigitCodes = 867;

    /// <summary>Worked by hand: of 9000, 90 end in two zeros, 9 repeat, 6 count up, 7 down, and 198 more begin with 19 or 20.</summary>
    private const int FourDigitCodes = 8690;

    [Theory]
    [InlineData("001")]
    [InlineData("100")]
    [InlineData("900")]
    [InlineData("111")]
    [InlineData("123")]
    [InlineData("321")]
    [InlineData("210")]
    [InlineData("1200")]
    [InlineData("4444")]
    [InlineData("5678")]
    [InlineData("1987")]
    [InlineData("2026")]
    public void A_code_that_reads_as_a_rank_a_series_or_a_year_is_never_drawn(string code)
    {
        Assert.True(BlindCodes.ReadsAsRank(code));
    }

    [Theory]
    [InlineData("101")]
    [InlineData("124")]
    [InlineData("135")]
    [InlineData("847")]
    [InlineData("2126")]
    public void Other_codes_may_be_drawn(string code)
    {
        Assert.False(BlindCodes.ReadsAsRank(code));
    }

    [Fact]
    public void All_three_digit_codes_can_be_drawn_and_no_more()
    {
        var codes = BlindCodes.Draw(ThreeDigitCodes, [], new Random(1));

        Assert.Equal(ThreeDigitCodes, codes.Distinct().Count());
        Assert.All(codes, code => Assert.InRange(int.Parse(code, CultureInfo.InvariantCulture), 101, 998));
        Assert.DoesNotContain(codes, BlindCodes.ReadsAsRank);
        Assert.All(BlindCodes.Draw(ThreeDigitCodes + 1, [], new Random(1)), code => Assert.Equal(4, code.Length));
    }

    [Fact]
    public void Codes_of_the_last_sessions_are_not_drawn_again()
    {
        var used = BlindCodes.Draw(400, [], new Random(1));

        var codes = BlindCodes.Draw(400, used, new Random(2));

        Assert.Empty(codes.Intersect(used));
        Assert.All(codes, code => Assert.Equal(3, code.Length));
    }

    [Theory]
    [InlineData(433, 3)]
    [InlineData(434, 4)]
    public void Four_digits_come_when_fewer_than_half_of_the_three_digit_codes_are_free(int used, int digits)
    {
        // 867 − 433 = 434 is more than half of 867, 433 is less.
        var code = BlindCodes.Draw(1, BlindCodes.Draw(used, [], new Random(4)), new Random(5)).Single();

        Assert.Equal(digits, code.Length);
    }

    [Fact]
    public void More_codes_than_there_are_is_refused()
    {
        Assert.Equal(FourDigitCodes, BlindCodes.Draw(FourDigitCodes, [], new Random(1)).Distinct().Count());

        var refused = Assert.Throws<RuleBrokenException>(() => BlindCodes.Draw(FourDigitCodes + 1, [], new Random(1)));

        Assert.Contains("Only 8690 blind codes are free and 8691 are needed", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_code_is_about_as_likely_as_any_other()
    {
        var random = new Random(7);

        var first = Enumerable.Range(0, 20_000).Select(_ => BlindCodes.Draw(1, [], random)[0][0]).CountBy(digit => digit).ToDictionary();

        // 867 codes, of each first digit 96 or 97: 20,000 draws give 2222 ± 200 (4.5 standard deviations of 44).
        Assert.Equal(9, first.Count);
        Assert.All(first.Values, count => Assert.InRange(count, 2022, 2422));
    }
}
