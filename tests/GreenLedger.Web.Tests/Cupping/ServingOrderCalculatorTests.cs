using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Cupping;

public sealed class ServingOrderCalculatorTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Four_cuppers_meet_four_samples_in_a_balanced_square()
    {
        var reply = await PostAsync(new { samples = 4, cuppers = 4, seed = 7 });

        // Williams 1949: n = 4 has each sample once at each position and once after each other (handbook quality.md 4.10).
        var orders = Orders(reply);
        Assert.All(orders, order => Assert.Equal([1, 2, 3, 4], order.Order()));
        Assert.All(Enumerable.Range(0, 4), position => Assert.Equal(4, orders.Select(order => order[position]).Distinct().Count()));
        Assert.Equal(12, orders.SelectMany(order => order.Zip(order.Skip(1))).Distinct().Count());
        Assert.True(reply.GetProperty("balance").GetProperty("isBalanced").GetBoolean());
        Assert.Equal("Balanced: each sample is served once at each position, and once directly after each other sample.", reply.GetProperty("balance").GetProperty("sentence").GetString());
    }

    [Fact]
    public async Task Fewer_cuppers_are_told_how_near_their_orders_come()
    {
        var balance = (await PostAsync(new { samples = 6, cuppers = 4 })).GetProperty("balance");

        // Worked by hand: 4 of 6 rows; each count is 0 or 1, even would be 4 ÷ 6.
        Assert.False(balance.GetProperty("isBalanced").GetBoolean());
        Assert.Equal(6, balance.GetProperty("cuppersForBalance").GetInt32());
        Assert.Equal(4.0 / 6, balance.GetProperty("evenCount").GetDouble(), 12);
        Assert.Equal((0, 1), (balance.GetProperty("fewestAtPosition").GetInt32(), balance.GetProperty("mostAfter").GetInt32()));
        Assert.StartsWith("Near-balanced: full balance for 6 samples needs 6 cuppers", balance.GetProperty("sentence").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_seed_of_an_answer_gives_the_same_orders_again()
    {
        var first = await PostAsync(new { samples = 9, cuppers = 5 });

        var again = await PostAsync(new { samples = 9, cuppers = 5, seed = first.GetProperty("seed").GetInt32() });

        Assert.Equal(Orders(first), Orders(again));
    }

    [Theory]
    [InlineData("""{ "samples": 0, "cuppers": 4 }""", "samples", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{ "samples": 41, "cuppers": 4 }""", "samples", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{ "samples": 4, "cuppers": 0 }""", "cuppers", HttpStatusCode.UnprocessableEntity)]
    [InlineData("""{ "samples": "many", "cuppers": 4 }""", "samples", HttpStatusCode.BadRequest)]
    public async Task A_table_that_is_none_is_refused_with_its_field(string body, string field, HttpStatusCode status)
    {
        var script = await house.ScriptAsync(Role.Viewer);

        var answer = await script.PostAsync(new Uri("/api/cupping/calculate/serving-order", UriKind.Relative), new StringContent(body, null, "application/json"), Stop);

        Assert.Equal(status, answer.StatusCode);
        Assert.Contains(field, await answer.Content.ReadAsStringAsync(Stop), StringComparison.OrdinalIgnoreCase);
    }

    private static List<List<int>> Orders(JsonElement reply) =>
        [.. reply.GetProperty("orders").EnumerateArray().Select(order => order.GetProperty("samples").EnumerateArray().Select(sample => sample.GetInt32()).ToList())];

    private async Task<JsonElement> PostAsync(object table)
    {
        var script = await house.ScriptAsync(Role.Viewer);
        var answer = await script.PostAsJsonAsync("/api/cupping/calculate/serving-order", table, Stop);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }
}
