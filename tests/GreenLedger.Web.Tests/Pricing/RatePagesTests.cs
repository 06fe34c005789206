using System.Net;
using System.Text;
using System.Text.Json;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Pricing;

public sealed class RatePagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("one sixteen", "")]
    [InlineData("0", "rate")]
    [InlineData("", "State how many units")]
    public async Task A_rate_that_cannot_be_is_refused_and_kept_as_typed(string units, string sentence)
    {
        var buyer = await house.BrowserAsync(Role.Buyer);

        var page = await TestBrowser.PageAsync(await buyer.SendFormAsync(
            "/Pricing/Rate", new Dictionary<string, string> { ["Input.Currency"] = "CHF", ["Input.UnitsPerEuro"] = units, ["Input.Source"] = "my bank" }));

        Assert.Contains(sentence, page.QuerySelector("[data-errors]")!.TextContent, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(units, page.QuerySelector("#Input_UnitsPerEuro")!.GetAttribute("value") ?? "");
        Assert.Equal("my bank", page.QuerySelector("#Input_Source")!.GetAttribute("value"));
        var franc = Currency.Of("CHF");
        Assert.False(await house.FromLedgerAsync(db => db.ExchangeRates.AnyAsync(rate => rate.Currency == franc, Stop)));
    }

    [Theory]
    [InlineData("KCF27", "300.00", "KCF27")] // Handbook, trade 12 no. 26: no such month.
    [InlineData("KCH27", "285.42", "0.05")] // Handbook, trade 12 no. 21: no multiple of the tick.
    public async Task A_quote_that_cannot_be_is_refused_and_kept_as_typed(string month, string quoted, string sentence)
    {
        var buyer = await house.BrowserAsync(Role.Buyer);

        var page = await TestBrowser.PageAsync(await buyer.SendFormAsync(
            "/Pricing/Quote", new Dictionary<string, string> { ["Input.Month"] = month, ["Input.Quoted"] = quoted, ["Input.Source"] = "the exchange" }));

        Assert.Contains(sentence, page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(month, page.QuerySelector("#Input_Month")!.GetAttribute("value"));
        Assert.Equal(quoted, page.QuerySelector("#Input_Quoted")!.GetAttribute("value"));
    }

    [Fact]
    public async Task A_file_of_reference_rates_is_taken_on_the_page_and_its_second_time_changes_nothing()
    {
        var buyer = await house.BrowserAsync(Role.Buyer);
        // The form of the historic CSV: handbook, trade 9.4.
        var file = Encoding.UTF8.GetBytes("Date,USD,GBP,\n2026-11-24,1.1600,0.8700,\n2026-11-23,1.1588,N/A,\n");
        var fields = new Dictionary<string, string> { ["Input.From"] = "2026-11-01" };

        var first = await buyer.SendFormAsync("/Pricing/ImportRates", fields, files: [("Input.File", "eurofxref-hist.csv", file)]);
        var second = await buyer.SendFormAsync("/Pricing/ImportRates", fields, files: [("Input.File", "eurofxref-hist.csv", file)]);

        Assert.Equal((HttpStatusCode.Redirect, HttpStatusCode.Redirect), (first.StatusCode, second.StatusCode));
        var page = await buyer.ReadAsync("/Pricing/Rates?from=2026-11-23&until=2026-11-24");
        Assert.Equal(["1.1600", "0.8700", "1.1588"], page.QuerySelectorAll("tbody tr").OrderByDescending(row => row.TextContent.Contains("24 Nov", StringComparison.Ordinal)).ThenByDescending(row => row.TextContent.Contains("USD", StringComparison.Ordinal)).Select(row => row.QuerySelector("td.number")!.TextContent));
    }

    [Fact]
    public async Task Routes_rates_and_quotes_name_their_records_by_one_identity_in_the_API()
    {
        var script = await house.ScriptAsync(Role.Buyer);

        var answer = await script.PostAsync(new Uri("/api/pricing/quotes", UriKind.Relative), new StringContent("""{ "month": "KCK27", "on": "2026-11-20", "quoted": 301.50 }""", null, "application/json"), Stop);

        using var reply = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(Stop));
        Assert.True(Guid.TryParse(reply.RootElement.GetProperty("id").GetString(), out _));
    }
}
