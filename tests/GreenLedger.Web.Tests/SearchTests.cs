using System.Net;
using System.Text.Json;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Papers;

namespace GreenLedger.Web.Tests;

public sealed class SearchTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_box_on_every_page_finds_in_groups()
    {
        await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var box = (await buyer.ReadAsync("/")).QuerySelector("form[role=search]")!;

        var page = await buyer.ReadAsync(box.GetAttribute("action") + "?q=FUNDO");

        var headings = page.QuerySelectorAll("main h2").Select(heading => heading.FirstChild!.TextContent.Trim());
        Assert.Equal(["Lots", "Offers"], headings);
        Assert.Equal("FUNDO", page.QuerySelector("#page-search")!.GetAttribute("value"));
    }

    [Fact]
    public async Task A_cupper_finds_neither_offers_nor_lots_nor_suppliers()
    {
        await FillAsync();

        var page = await (await house.BrowserAsync(Role.Cupper)).ReadAsync("/Search?q=porto+alto");
        var script = await house.ScriptAsync(Role.Cupper);
        var answer = await script.GetStringAsync("/api/search?q=vale&kind=lot", Cancel);

        Assert.Contains("Nothing found", page.QuerySelector(".empty")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Vale Fundo", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_search_of_a_thousand_words_is_answered()
    {
        await FillAsync();
        var script = await house.ScriptAsync(Role.Viewer);

        var answer = await script.GetAsync("/api/search?q=vale+" + string.Join('+', Enumerable.Range(100, 1000)), Cancel);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task A_script_finds_without_accents()
    {
        await FillAsync();
        var script = await house.ScriptAsync(Role.Viewer);

        using var answer = JsonDocument.Parse(await script.GetStringAsync("/api/search?q=olho%20d%20agua", Cancel));

        var group = answer.RootElement.GetProperty("groups")[0];
        Assert.Equal("producer", group.GetProperty("kind").GetString());
        Assert.Equal("Sítio Olho d'Água", group.GetProperty("rows")[0].GetProperty("name").GetString());
    }

    [Fact]
    public async Task Too_few_letters_are_answered_with_a_sentence()
    {
        var script = await house.ScriptAsync(Role.Viewer);

        var answer = await script.GetAsync("/api/search?q=a", Cancel);
        var page = await (await house.BrowserAsync(Role.Viewer)).ReadAsync("/Search?q=a");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("at least 2 letters", page.QuerySelector(".note")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_typed_is_shown_as_text()
    {
        var page = await (await house.BrowserAsync(Role.Viewer)).ReadAsync("/Search?q=%3Cscript%3Ealert(1)%3C/script%3E");

        Assert.Contains("<script>alert(1)</script>", page.QuerySelector(".empty")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(page.QuerySelectorAll("main script"), script => script.TextContent.Contains("alert", StringComparison.Ordinal));
    }

    private async Task FillAsync()
    {
        await PapersHouse.AddAsync(house);
        await house.InLedgerAsync(async db =>
        {
            db.Add(new Producer("Sítio Olho d'Água", ProducerKind.Farm, null, "Mantiqueira"));
            await db.SaveChangesAsync(Cancel);
        });
    }
}
