using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using ClosedXML.Excel;
using GreenLedger.Domain.People;
using GreenLedger.Examples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Pricing;

/// <summary>Example D of the handbook, trade 3.3, through the page, its workbook and the API.</summary>
public sealed class LandedCostPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string Question =
        "/Pricing/Calculate?asked=true&Price=3.2165&Currency=USD&Unit=Pound&Delivery=Fob&Place=Puerto+Cortés&Origin=HN&QuantityKg=18975&Bags=275";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Example_D_stands_on_the_page_with_every_leg_and_a_picture_of_them()
    {
        await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync(Question);

        // Handbook, trade 3.3 Example D: total 122,557.80 EUR, 6.4783 EUR/kg, line by line.
        var text = page.QuerySelector("main")!.TextContent;
        Assert.Contains("6.48 EUR/kg", text, StringComparison.Ordinal);
        Assert.Contains("122,557.80 EUR", text, StringComparison.Ordinal);
        var rows = page.QuerySelectorAll(".cost-lines tbody tr").ToDictionary(row => row.QuerySelector("th")!.TextContent, row => row.QuerySelectorAll("td").Select(cell => cell.TextContent.Trim()).ToArray());
        Assert.Equal(("134,554.93 USD", "115,995.63"), (rows["Coffee"][1], rows["Coffee"][3]));
        Assert.Equal(("3,250.00 USD", "2,801.72"), (rows["Ocean freight"][1], rows["Ocean freight"][3]));
        Assert.Equal(("532.60 USD", "459.14"), (rows["Insurance"][1], rows["Insurance"][3]));
        Assert.Equal(("1,822.10 USD", "1,570.78"), (rows["Finance"][1], rows["Finance"][3]));
        Assert.Equal("360.53", rows["Storage"][3]);
        var picture = page.QuerySelector("svg.cost-bar")!;
        // Worked by hand: 115,995.63 of 122,557.80 is 94.6 %; freight and insurance 3,260.86, 2.7 %.
        Assert.Contains("Coffee 94.6 %, Freight and insurance 2.7 %", picture.GetAttribute("aria-label"), StringComparison.Ordinal);
        Assert.Empty(page.QuerySelectorAll("[style]"));
    }

    [Fact]
    public async Task The_parts_per_kilogram_add_up_to_the_shown_total_on_the_page_and_in_the_workbook()
    {
        await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync(Question);
        var answer = await buyer.Client.GetAsync(new Uri(page.QuerySelector("a[href*='handler=Workbook']")!.GetAttribute("href")!, UriKind.Relative), Stop);

        var parts = page.QuerySelectorAll(".cost-lines tbody tr td:last-child").Select(cell => cell.TextContent.Trim()).Where(cell => cell != "–").Sum(cell => decimal.Parse(cell, CultureInfo.InvariantCulture));
        Assert.Equal(6.4783m, parts);
        using var workbook = new XLWorkbook(await answer.Content.ReadAsStreamAsync(Stop));
        var sheet = workbook.Worksheets.Single();
        var rows = sheet.RowsUsed().Skip(1).ToList();
        Assert.Equal("Total", rows[^1].Cell(1).GetString());
        Assert.Equal(122_557.80, rows[^1].Cell(6).GetDouble(), 2);
        Assert.Equal(122_557.80, rows[..^1].Sum(row => row.Cell(6).IsEmpty() ? 0 : row.Cell(6).GetDouble()), 2);
        Assert.Equal(6.4783, rows[^1].Cell(7).GetDouble(), 4);
    }

    [Fact]
    public async Task Example_D_comes_out_of_the_API_from_a_route_of_the_request()
    {
        var script = await house.ScriptAsync(Role.Buyer);

        var reply = await CalculateAsync(script, Body(rates: """[{ "currency": "USD", "on": "2026-11-24", "unitsPerEuro": 1.16 }]"""));

        Assert.Equal(122_557.80m, reply.GetProperty("total").GetProperty("amount").GetDecimal());
        Assert.Equal("EUR", reply.GetProperty("total").GetProperty("currency").GetString());
        Assert.Equal(6.4783m, reply.GetProperty("landedCostPerKg").GetProperty("amount").GetDecimal());
        Assert.Equal(18_918.075m, reply.GetProperty("landedKg").GetDecimal());
        // Handbook, trade 3.3: 3.4087 USD/lb.
        Assert.Equal(3.4087m, Math.Round(reply.GetProperty("landedCostPerKgUnrounded").GetDecimal() * 1.16m * 0.45359237m, 4));
    }

    [Fact]
    public async Task A_missing_rate_and_an_unanswered_stage_are_named_and_there_is_no_total()
    {
        var script = await house.ScriptAsync(Role.Buyer);

        var rate = await CalculateAsync(script, Body(rates: "[]").Replace("\"USD\"", "\"SEK\"", StringComparison.Ordinal));
        var stage = await CalculateAsync(script, Body(rates: """[{ "currency": "USD", "on": "2026-11-24", "unitsPerEuro": 1.16 }]""")
            .Replace("""{ "stage": "haulage", "way": "perContainer", "figure": 640, "currency": "EUR" },""", "", StringComparison.Ordinal));

        Assert.Equal(JsonValueKind.Null, rate.GetProperty("total").ValueKind);
        Assert.Equal(JsonValueKind.Null, rate.GetProperty("lines")[0].GetProperty("amount").ValueKind);
        Assert.Contains(rate.GetProperty("problems").EnumerateArray(), problem => problem.GetProperty("message").GetString()!.Contains("There is no exchange rate for", StringComparison.Ordinal));
        Assert.Equal(JsonValueKind.Null, stage.GetProperty("total").ValueKind);
        var open = Assert.Single(stage.GetProperty("problems").EnumerateArray());
        Assert.Equal("haulage", open.GetProperty("stage").GetString());
        Assert.Contains("does not answer Haulage to the warehouse", open.GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_rate_on_the_page_leads_to_where_it_is_typed()
    {
        await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);

        var page = await buyer.ReadAsync(Question.Replace("Currency=USD", "Currency=SEK", StringComparison.Ordinal));

        var note = page.QuerySelector(".note-caution")!;
        Assert.Contains("There is no exchange rate for", note.TextContent, StringComparison.Ordinal);
        Assert.NotNull(note.QuerySelector("a[href^='/Pricing/Rate']"));
        Assert.Null(page.QuerySelector("svg.cost-bar"));
        Assert.Equal("no rate", page.QuerySelector(".cost-lines tbody tr")!.QuerySelectorAll("td")[3].TextContent.Trim());
    }

    [Fact]
    public async Task A_route_with_an_open_stage_is_refused_and_everything_typed_is_kept()
    {
        var buyer = await house.BrowserAsync(Role.Buyer);

        var page = await TestBrowser.PageAsync(await buyer.SendFormAsync("/Pricing/Route", new Dictionary<string, string>
        {
            ["Input.Name"] = "Half a route",
            ["Input.PortOfLoading"] = "Santos / BRSSZ",
            ["Input.PortOfDestination"] = "Hamburg / DEHAM",
            ["Input.Warehouse"] = "Hafen warehouse",
            ["Input.Legs[0].Way"] = "None",
            ["Input.Legs[6].Way"] = "PerContainer",
            ["Input.Legs[6].Figure"] = "a lot",
        }));

        Assert.NotNull(page.QuerySelector("[data-errors]"));
        Assert.Equal("Half a route", page.QuerySelector("#Input_Name")!.GetAttribute("value"));
        Assert.Equal("a lot", page.QuerySelector("[name='Input.Legs[6].Figure']")!.GetAttribute("value"));
        Assert.Equal("None", page.QuerySelector("[name='Input.Legs[0].Way'] option[selected]")!.GetAttribute("value"));
        Assert.False(await house.FromLedgerAsync(db => db.Routes.AnyAsync(route => route.Name == "Half a route", Stop)));
    }

    [Fact]
    public async Task A_route_that_somebody_saved_meanwhile_shows_both_versions()
    {
        await FillAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var id = await house.FromLedgerAsync(db => db.Routes.Where(route => route.Name == "Honduras to Hamburg").Select(route => route.Id).SingleAsync(Stop));
        var address = $"/Pricing/Route/{id}";
        Assert.Equal(HttpStatusCode.Redirect, (await buyer.SendFormAsync(address, new Dictionary<string, string> { ["Input.Warehouse"] = "Theirs" })).StatusCode);

        var page = await TestBrowser.PageAsync(await buyer.SendFormAsync(address, new Dictionary<string, string> { ["Input.Warehouse"] = "Mine", ["Input.Version"] = "0" }));

        var differs = page.QuerySelector("[data-errors] tbody")!.TextContent;
        Assert.Contains("Mine", differs, StringComparison.Ordinal);
        Assert.Contains("Theirs", differs, StringComparison.Ordinal);
        Assert.Equal("Mine", page.QuerySelector("#Input_Warehouse")!.GetAttribute("value"));
        var history = (await buyer.ReadAsync(address)).QuerySelector("section[aria-labelledby=history]")!.TextContent;
        Assert.Contains("A Buyer", history, StringComparison.Ordinal);
    }

    private async Task FillAsync()
    {
        await house.OpenHouseAsync();
        await house.InLedgerAsync(async db =>
        {
            if (!await db.Routes.AnyAsync(route => route.Name == "Honduras to Hamburg", Stop))
            {
                db.AddRange(ExampleD.Route(), ExampleD.Rate(new DateOnly(2026, 1, 2)));
                await db.SaveChangesAsync(Stop);
            }
        });
    }

    private static async Task<JsonElement> CalculateAsync(HttpClient script, string body)
    {
        var answer = await script.PostAsync(new Uri("/api/pricing/calculate/landed-cost", UriKind.Relative), new StringContent(body, null, "application/json"), Stop);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }

    private static string Body(string rates) => $$"""
        { "price": { "amount": 3.2165, "currency": "USD", "unit": "lb" }, "quantityKg": 18975, "bags": 275, "delivery": "FOB", "place": "Puerto Cortés", "originCountry": "HN",
          "houseCurrency": "EUR", "on": "2026-11-25", "rates": {{rates}},
          "route": { "name": "Honduras to Hamburg", "portOfLoading": "Puerto Cortés / HNPCR", "portOfDestination": "Hamburg / DEHAM", "warehouse": "Hafen warehouse", "originCountry": "HN",
            "sharedOver": "quantity", "fillKg": 19200, "containersPerShipment": 1, "weightLossPercent": 0.3, "insuredPercent": 110,
            "legs": [
              { "stage": "packing", "way": "none" }, { "stage": "originLoading", "way": "none" }, { "stage": "inlandCarriage", "way": "none" }, { "stage": "exportClearance", "way": "none" },
              { "stage": "originTerminal", "way": "none" }, { "stage": "onBoard", "way": "none" },
              { "stage": "freight", "way": "perContainer", "figure": 3250, "currency": "USD", "name": "Ocean freight" },
              { "stage": "insurance", "way": "percentOfCif", "figure": 0.35 },
              { "stage": "destinationTerminal", "way": "perContainer", "figure": 285, "currency": "EUR" },
              { "stage": "carrierDocuments", "way": "perShipment", "figure": 95, "currency": "EUR" },
              { "stage": "importClearance", "way": "perShipment", "figure": 120, "currency": "EUR" },
              { "stage": "inspection", "way": "perShipment", "figure": 80, "currency": "EUR" },
              { "stage": "duty", "way": "percentOfCif", "figure": 0 }, { "stage": "handlingOut", "way": "none" },
              { "stage": "haulage", "way": "perContainer", "figure": 640, "currency": "EUR" },
              { "stage": "unloading", "way": "included" },
              { "stage": "weighingAndSampling", "way": "perShipment", "figure": 150, "currency": "EUR" },
              { "stage": "finance", "way": "interest", "figure": 7.5, "time": 65 },
              { "stage": "storage", "way": "perTonneMonth", "figure": 9.5, "currency": "EUR", "time": 2 }
            ] } }
        """;
}
