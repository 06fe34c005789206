using System.Net;
using System.Text.Json;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Papers;

public sealed class HistoryTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_administrator_reads_who_did_what_in_words()
    {
        var (lot, _, _) = await PapersHouse.AddAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync($"/Papers/WriteNote/Lot/{lot.Id}", new Dictionary<string, string> { ["Input.Text"] = "Ask for more." });

        var page = await (await house.BrowserAsync(Role.Administrator)).ReadAsync("/Papers/Changes?kind=Note");

        var row = Assert.Single(page.QuerySelectorAll("tbody tr"));
        Assert.Contains("A Buyer", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("Text:", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("Ask for more.", row.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_the_administrator_reads_all_changes()
    {
        foreach (var role in new[] { Role.Viewer, Role.Cupper, Role.LeadCupper, Role.Buyer })
        {
            var answer = await (await house.BrowserAsync(role)).Client.GetAsync("/Papers/Changes", Cancel);
            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }
    }

    [Fact]
    public async Task A_filter_that_fits_nothing_says_what_to_do()
    {
        await PapersHouse.AddAsync(house);

        var page = await (await house.BrowserAsync(Role.Administrator)).ReadAsync("/Papers/Changes?from=2090-01-01");

        Assert.Contains("Widen the dates", page.QuerySelector(".empty")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_script_reads_a_records_history_with_units_in_the_names()
    {
        var (_, offer, _) = await PapersHouse.AddAsync(house);
        var script = await house.ScriptAsync(Role.Viewer);

        using var lines = JsonDocument.Parse(await script.GetStringAsync($"/api/papers/history?kind=Offer&id={offer.Id}", Cancel));

        var line = Assert.Single(lines.RootElement.EnumerateArray());
        Assert.Equal("added", line.GetProperty("act").GetString());
        Assert.Equal(1_200_000_000_000, line.GetProperty("after").GetProperty("quantityMicrograms").GetInt64()); // by hand: 20 × 60 kg
    }

    [Fact]
    public async Task A_cuppers_script_reads_no_history_of_offers()
    {
        var (_, offer, sample) = await PapersHouse.AddAsync(house);
        var script = await house.ScriptAsync(Role.Cupper);

        Assert.Equal(HttpStatusCode.NotFound, (await script.GetAsync($"/api/papers/history?kind=Offer&id={offer.Id}", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await script.GetAsync($"/api/papers/history?kind=Sample&id={sample.Id}", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await script.GetAsync("/api/papers/changes", Cancel)).StatusCode);
    }
}
