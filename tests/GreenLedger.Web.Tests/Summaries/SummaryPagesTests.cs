using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Summaries;

/// <summary>The demo's purchase summary as it is rendered: page, rows behind it and API say the same to the cent.</summary>
public sealed class SummaryPagesTests(DemoSummary demo) : IClassFixture<DemoSummary>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("Origin")]
    [InlineData("Supplier")]
    [InlineData("Process")]
    [InlineData("Certificate")]
    [InlineData("Programme")]
    public async Task The_page_the_rows_behind_it_and_the_API_have_the_same_totals(string cut)
    {
        var browser = await demo.House.BrowserAsync(Role.Viewer);
        var script = await demo.House.ScriptAsync(Role.Viewer);

        var page = await browser.ReadAsync($"/Summaries?By={cut}&{DemoSummary.Year}");
        var reply = await script.GetFromJsonAsync<JsonElement>($"/api/summaries/purchases?by={cut}&{DemoSummary.Year}", Stop);

        var contracted = reply.GetProperty("contracted");
        var (kilograms, money) = (contracted.GetProperty("kg").GetDecimal(), contracted.GetProperty("value").GetProperty("amount").GetDecimal());
        var groups = Table(page, "By " + cut.ToLowerInvariant());
        Assert.True(money > 0m, "the demo bought something in the year");
        Assert.Equal((kilograms, money), (Figure(groups.Foot!.Rows[0].Cells[2]), Figure(groups.Foot.Rows[0].Cells[3])));
        Assert.Equal(money, groups.Bodies[0].Rows.Sum(row => Figure(row.Cells[3])));
        Assert.Equal(money, reply.GetProperty("groups").EnumerateArray().Sum(group => group.GetProperty("contracted").GetProperty("value").GetProperty("amount").GetDecimal()));
        var rows = Table(await browser.ReadAsync(Address(Table(page, "In the period and before").Bodies[0].Rows[0].Cells[3])), "Contracted");
        Assert.Equal((kilograms, money), (Figure(rows.Foot!.Rows[0].Cells[9]), Figure(rows.Foot.Rows[0].Cells[10])));
    }

    [Fact]
    public async Task Every_figure_that_opens_leads_to_rows_with_its_own_total()
    {
        var browser = await demo.House.BrowserAsync(Role.Buyer);
        var page = await browser.ReadAsync($"/Summaries?By=Origin&{DemoSummary.Year}");
        var seen = 0;

        foreach (var (table, column, head) in new[]
        {
            ("In the period and before", 2, "kg"), ("In the period and before", 3, "EUR"), ("By band of quality", 3, "EUR"), ("By origin", 10, "kg"), ("Scores, bought against offered", 3, "kg"),
            ("What arrived, at its cost in the warehouse", 3, "EUR"),
        })
        {
            foreach (var cell in Table(page, table).Bodies[0].Rows.Select(row => row.Cells[column]).Where(cell => cell.QuerySelector("a") is not null && Figure(cell) > 0m))
            {
                var rows = (await browser.ReadAsync(Address(cell))).QuerySelector<IHtmlTableElement>("table")!;
                var total = rows.Head!.Rows[0].Cells.Index().Single(one => one.Item.TextContent.Trim() == head).Index;
                Assert.Equal(Figure(cell), Figure(rows.Foot!.Rows[0].Cells[total]));
                seen++;
            }
        }

        Assert.True(seen > 10, $"only {seen} figures opened");
    }

    [Fact]
    public async Task One_group_alone_has_the_figures_that_it_has_among_the_others()
    {
        var browser = await demo.House.BrowserAsync(Role.Buyer);
        var groups = Table(await browser.ReadAsync($"/Summaries?By=Origin&{DemoSummary.Year}"), "By origin");
        var first = groups.Bodies[0].Rows[0];

        var alone = Table(await browser.ReadAsync(Address(first.Cells[0])), "In the period and before");

        Assert.Equal((Figure(first.Cells[2]), Figure(first.Cells[3])), (Figure(alone.Bodies[0].Rows[0].Cells[2]), Figure(alone.Bodies[0].Rows[0].Cells[3])));
    }

    [Fact]
    public async Task A_script_reads_of_one_supplier_what_the_page_shows_of_that_group()
    {
        var (browser, script) = (await demo.House.BrowserAsync(Role.Buyer), await demo.House.ScriptAsync(Role.Viewer));
        var first = Table(await browser.ReadAsync($"/Summaries?By=Supplier&{DemoSummary.Year}"), "By supplier").Bodies[0].Rows[0];
        var name = first.Cells[0].TextContent.Trim();
        var id = await demo.House.FromLedgerAsync(db => db.Suppliers.Where(supplier => supplier.Name == name).Select(supplier => supplier.Id).SingleAsync(Stop));

        var answer = await script.GetFromJsonAsync<JsonElement>($"/api/summaries/suppliers/{id}?{DemoSummary.Year}", Stop);

        var contracted = answer.GetProperty("purchases").GetProperty("contracted");
        Assert.Equal((name, Figure(first.Cells[3])), (answer.GetProperty("supplier").GetString(), contracted.GetProperty("value").GetProperty("amount").GetDecimal()));
        Assert.True(answer.GetProperty("record").GetProperty("bought").GetProperty("of").GetInt32() > 0);
        Assert.Equal(HttpStatusCode.NotFound, (await script.GetAsync(new Uri($"/api/summaries/suppliers/{Guid.NewGuid()}", UriKind.Relative), Stop)).StatusCode);
    }

    [Theory]
    [InlineData("/Summaries?From=2026-12-01&Until=2026-01-01", "ends before it begins")]
    [InlineData("/Summaries?From=someday", "A day is written as")]
    [InlineData("/Summaries/Rows?Figure=Everything", "asks for no figure")]
    public async Task An_address_typed_wrong_is_answered_with_a_sentence(string address, string sentence)
    {
        var page = await (await demo.House.BrowserAsync(Role.Buyer)).ReadAsync(address);

        Assert.Contains(sentence, page.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_script_that_asks_for_no_period_is_told_so()
    {
        var answer = await (await demo.House.ScriptAsync(Role.Viewer)).GetAsync(new Uri("/api/summaries/purchases?from=2026-12-01&until=2026-01-01", UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("ends before it begins", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    private static IHtmlTableElement Table(IHtmlDocument page, string title) =>
        page.QuerySelectorAll(".table-scroll").Single(box => box.GetAttribute("aria-label") == title).QuerySelector<IHtmlTableElement>("table")!;

    private static string Address(IElement cell) => cell.QuerySelector("a")!.GetAttribute("href")!;

    private static decimal Figure(IElement cell) => decimal.Parse(cell.TextContent.Trim(), NumberStyles.Number, CultureInfo.InvariantCulture);
}
