using System.Net;
using System.Text.Json;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Choosing;

/// <summary>The shortlist on the page and for scripts; figures are those of handbook quality.md section 5.</summary>
public sealed class ShortlistTests(OpenShop shop) : IClassFixture<OpenShop>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_page_ranks_and_names_the_gate_of_what_it_cannot_rank()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync("/Choosing");

        Assert.Equal(["A", "E", "B", "C", "D"], page.QuerySelectorAll("#ranked .rank + th > a").Select(link => link.TextContent));
        var failed = page.QuerySelector("details:has(#failed) tbody tr")!.TextContent;
        Assert.Contains("the seller states 86.00, which these rules do not rank", failed, StringComparison.Ordinal);
        Assert.Contains("no score", failed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_lot_leads_to_its_own_page_with_the_weights_that_are_tried()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        var page = await buyer.ReadAsync("/Choosing?WeightScore=100&WeightCost=0");

        var links = page.QuerySelectorAll("#ranked tbody th.lot > a, #ranked td a.btn").Select(link => link.GetAttribute("href")!).ToList();

        Assert.Equal(12, links.Count);
        Assert.All(links, link => Assert.Contains("WeightScore=100", link, StringComparison.Ordinal));
        var first = await buyer.ReadAsync(links[0]);
        Assert.Contains("Decide on E", first.QuerySelector("h1")!.TextContent, StringComparison.Ordinal);
    }

    [Theory] // worked by hand: by score alone E A B, by cost alone C D B
    [InlineData("WeightScore=100&WeightCost=0", "E A B C D")]
    [InlineData("WeightScore=0&WeightCost=1", "C D B A E")]
    public async Task Other_weights_in_the_address_rank_anew(string weights, string expected)
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync("/Choosing?Rules=House&" + weights);

        Assert.Equal(expected, string.Join(" ", page.QuerySelectorAll("#ranked .rank + th > a").Select(link => link.TextContent)));
        Assert.Contains("being tried", page.QuerySelector("#ranked .note-caution")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_list_can_be_read_by_cost_while_ranks_stay()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync("/Choosing?sort=cost");

        Assert.Equal(["C 4", "D 5", "B 3", "A 1", "E 2"], page.QuerySelectorAll("#ranked .rank").Select(rank => $"{rank.NextElementSibling!.QuerySelector("a")!.TextContent} {rank.TextContent}"));
    }

    [Theory]
    [InlineData("WeightScore=-5", "A weight is 0 or more.")]
    [InlineData("WeightScore=0&WeightCost=0", "At least one weight must be above 0.")]
    [InlineData("WeightScore=much", "A weight is a number from 0 up.")]
    public async Task A_weight_that_cannot_be_is_answered_in_a_sentence(string weights, string sentence)
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync("/Choosing?" + weights);

        Assert.Contains(sentence, page.QuerySelector("#ranked [role=alert]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Rules_of_an_unknown_name_are_not_there()
    {
        var buyer = (await shop.House.BrowserAsync(Role.Buyer)).Client;

        var answer = await buyer.GetAsync(new Uri("/Choosing?Rules=Nobody", UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Fact]
    public async Task A_viewer_reads_the_list_and_is_offered_nothing_to_change()
    {
        var viewer = await shop.House.BrowserAsync(Role.Viewer);

        var page = await viewer.ReadAsync("/Choosing");

        Assert.Equal(5, page.QuerySelectorAll("#ranked .rank").Length);
        Assert.DoesNotContain(page.QuerySelectorAll("main .btn"), button => button.TextContent.Contains("Decide", StringComparison.Ordinal) || button.TextContent.Contains("Edit", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Scripts_read_the_same_ranking()
    {
        var script = await shop.House.ScriptAsync(Role.Buyer);

        var rows = JsonDocument.Parse(await script.GetStringAsync(new Uri("/api/choosing/shortlist?rules=House", UriKind.Relative), Stop)).RootElement;

        Assert.Equal(["A", "E", "B", "C", "D", "F"], rows.EnumerateArray().Select(row => row.GetProperty("ref").GetString()));
        var first = rows[0];
        Assert.Equal((1, 86.50m, "washed", true), (first.GetProperty("rank").GetInt32(), first.GetProperty("score").GetDecimal(), first.GetProperty("process").GetString(), first.GetProperty("onFront").GetBoolean()));
        Assert.Equal((8.80m, "EUR"), (first.GetProperty("landedCostPerKg").GetProperty("amount").GetDecimal(), first.GetProperty("landedCostPerKg").GetProperty("currency").GetString()));
        Assert.Equal(0.1017m, Math.Round(first.GetProperty("costPerPoint").GetProperty("amount").GetDecimal(), 4));
        Assert.InRange(first.GetProperty("chanceBest").GetDouble(), 0, first.GetProperty("chanceTopThree").GetDouble());
        Assert.InRange(first.GetProperty("low").GetDecimal(), 80m, first.GetProperty("high").GetDecimal());
        Assert.Equal(8.80 / Math.Exp(-0.069724), first.GetProperty("predictedCostPerKg").GetProperty("amount").GetDouble(), 4);
        Assert.NotEmpty(first.GetProperty("reasons").EnumerateArray());
        Assert.Equal((0, "no score"), (rows[5].GetProperty("rank").GetInt32(), rows[5].GetProperty("failedGates")[0].GetString()));
    }

    [Fact]
    public async Task Scripts_are_told_that_there_are_no_such_rules()
    {
        var script = await shop.House.ScriptAsync(Role.Buyer);

        var answer = await script.GetAsync(new Uri("/api/choosing/shortlist?rules=Nobody", UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Contains("Nobody", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }
}
