using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Summaries;

/// <summary>The demo's position as page and API tell it.</summary>
public sealed class PositionTests(DemoSummary demo) : IClassFixture<DemoSummary>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Page_and_API_have_the_same_kilograms_and_every_month_opens_to_contracts_that_add_up_to_it()
    {
        var page = await (await demo.House.BrowserAsync(Role.Viewer)).ReadAsync("/Summaries/Position");
        var answer = await (await demo.House.ScriptAsync(Role.Viewer)).GetFromJsonAsync<JsonElement>("/api/summaries/position", Stop);

        var months = Table(page, "Position by futures month");
        var rows = answer.GetProperty("rows").EnumerateArray().ToList();
        Assert.True(rows.Count(row => row.GetProperty("lotsToFix").ValueKind == JsonValueKind.Number) > 1, "the demo stands against several months");
        Assert.Equal(rows.Select(Kilograms), months.Bodies[0].Rows.Select(Shown));
        Assert.Equal(Kilograms(answer.GetProperty("total")), Shown(months.Foot!.Rows[0]));
        foreach (var month in months.Bodies[0].Rows.Where(row => row.Cells[0].TextContent.Trim() != "No contract"))
        {
            var contracts = Table(page, "Contracts of " + month.Cells[0].TextContent.Trim()).Bodies[0].Rows;
            Assert.Equal(Figure(month.Cells[1]), contracts.Sum(row => Figure(row.Cells[1])));
            Assert.Equal(Figure(month.Cells[7]), contracts.Sum(row => Figure(row.Cells[5])));
        }
    }

    /// <summary>A lot of arabica is 37,500 lb (exchange specification; handbook trade.md 2.1): ten cents are USD 3,750 a lot.</summary>
    [Fact]
    public async Task A_rise_of_ten_cents_costs_3750_dollars_for_each_lot_that_is_not_fixed()
    {
        var answer = await (await demo.House.ScriptAsync(Role.Viewer)).GetFromJsonAsync<JsonElement>("/api/summaries/position?arabica=10", Stop);

        var moves = answer.GetProperty("moves").EnumerateArray().ToDictionary(move => move.GetProperty("futuresMonth").GetString()!, move => move.GetProperty("unpricedCostsMore").GetProperty("amount").GetDecimal());
        var open = answer.GetProperty("rows").EnumerateArray().Where(row => row.GetProperty("futuresMonth").GetString()?.StartsWith("KC", StringComparison.Ordinal) == true).ToList();
        Assert.NotEmpty(open);
        Assert.All(open, row => Assert.Equal(Math.Round(row.GetProperty("lotsToFix").GetDecimal() * 3_750m, 2, MidpointRounding.AwayFromZero), moves[row.GetProperty("futuresMonth").GetString()!]));

        var page = await (await demo.House.BrowserAsync(Role.Viewer)).ReadAsync("/Summaries/Position?arabica=10");
        Assert.Equal(moves.Values.Sum(), Figure(Table(page, "What the move would do").Foot!.Rows[0].Cells[1]));
    }

    [Theory]
    [InlineData("arabica=much", "is a number such as 10 or -7.5")]
    [InlineData("arabica=-100000", "it cannot fall by 100000")]
    public async Task A_move_that_cannot_be_is_answered_with_a_sentence_and_stays_typed(string asked, string sentence)
    {
        var page = await (await demo.House.BrowserAsync(Role.Buyer)).ReadAsync("/Summaries/Position?" + asked);

        Assert.Contains(sentence, page.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(asked.Split('=')[1], page.QuerySelector<IHtmlInputElement>("#arabica")!.Value);
        Assert.NotEqual(HttpStatusCode.OK, (await (await demo.House.ScriptAsync(Role.Buyer)).GetAsync(new Uri("/api/summaries/position?" + asked, UriKind.Relative), Stop)).StatusCode);
    }

    private static (decimal Contracted, decimal Priced, decimal Unpriced, decimal ToCome, decimal InStock) Kilograms(JsonElement row) =>
        (Rounded(row, "contractedKg"), Rounded(row, "pricedKg"), Rounded(row, "unpricedKg"), Rounded(row, "toComeKg"), Rounded(row, "inStockKg"));

    private static decimal Rounded(JsonElement row, string name) => Math.Round(row.GetProperty(name).GetDecimal(), 2, MidpointRounding.AwayFromZero);

    private static (decimal, decimal, decimal, decimal, decimal) Shown(IHtmlTableRowElement row) =>
        (Figure(row.Cells[1]), Figure(row.Cells[2]), Figure(row.Cells[3]), Figure(row.Cells[6]), Figure(row.Cells[7]));

    private static IHtmlTableElement Table(IHtmlDocument page, string title) =>
        page.QuerySelectorAll(".table-scroll").Single(box => box.GetAttribute("aria-label") == title).QuerySelector<IHtmlTableElement>("table")!;

    /// <summary>Nothing is written as a dash.</summary>
    private static decimal Figure(IElement cell) => cell.TextContent.Trim() == "–" ? 0m : decimal.Parse(cell.TextContent.Trim().Split(' ')[0], NumberStyles.Number, CultureInfo.InvariantCulture);
}
