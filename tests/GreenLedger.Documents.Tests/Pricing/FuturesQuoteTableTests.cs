using System.Text;
using GreenLedger.Documents.Pricing;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Documents.Tests.Pricing;

public sealed class FuturesQuoteTableTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Theory]
    [InlineData("month,date,price\nKCH27,2026-11-24,286.65\nRCK27,2026-11-24,4012\n")]
    [InlineData("Date;Contract;Settlement\r\n24 Nov 2026;KCH7;286,65\r\n24 Nov 2026;RCK27;4,012\r\n")]
    [InlineData("\uFEFFSymbol\tClose\tDay\nkch2027\t286.65\t24-Nov-2026\n\nRCK27\t4012.00\t2026-11-24")]
    public void Quotes_are_read_in_the_usual_dialects(string text)
    {
        var file = Read(text);

        Assert.Empty(file.Problems);
        Assert.Equal(
            [(FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3), 286.65m), (FuturesMonth.Of(FuturesMarket.Robusta, 2027, 5), 4012m)],
            file.Lines.Select(line => (line.Month, line.Quoted)));
        Assert.All(file.Lines, line => Assert.Equal(new DateOnly(2026, 11, 24), line.On));
    }

    [Fact] // handbook, trade 12 no. 26: KCF27 is no month; 11/12/2026 could be two days
    public void Everything_that_cannot_be_read_is_told_with_its_row_and_nothing_is_taken()
    {
        var file = Read("month,date,price\nKCF27,2026-11-24,286.65\nKCH27,11/12/2026,high\nKCH27,2026-11-24,286.65\n");

        Assert.Empty(file.Lines);
        Assert.Equal([(2, "month"), (3, "date"), (3, "price")], file.Problems.Select(problem => (problem.Row!.Value, problem.Column!)));
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("month,date\nKCH27,2026-11-24\n", "price")]
    [InlineData("month,date,price\n", "no quotes")]
    public void A_file_without_quotes_is_refused_in_a_sentence(string text, string says) =>
        Assert.Contains(says, Assert.Single(Read(text).Problems).Message);

    private static QuoteFile Read(string text) => FuturesQuoteTable.Read(Encoding.UTF8.GetBytes(text), Today);
}
