using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Stock;

/// <summary>What a house had before its ledger, loaded from a file.</summary>
public sealed class OpeningStockTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_file_is_shown_before_it_is_stored_and_then_stands_as_dated_movements_with_their_cost()
    {
        var known = await AddLotAsync("OP-1", "Known to the ledger");
        var warehouse = await AddWarehouseAsync("Opening quay");
        var buyer = await house.BrowserAsync(Role.Buyer);
        const string file = "Lot;Name;Supplier;Origin;Warehouse;Bags;As packed (kg);As weighed (kg);Day;Invoice;Cost\n"
            + "OP-1;;;;Opening quay;10;600;598.5;2026-09-30;F-71;3900\n"
            + "OP-2;Alto Verde;Sierra Clara Exports;Peru;;20;1380;1377.2;;;\n"
            + "OP-3;;;;Nowhere;5;300;300;2026-09-30;;\n"
            + "OP-4;;;Atlantis;Opening quay;5;300;300;2026-09-30;;\n";

        var sent = await SendFileAsync(buyer, file);
        var address = sent.Headers.Location!.OriginalString;
        var preview = await buyer.ReadAsync($"{address}&Input.WarehouseId={warehouse}&Input.On=2026-10-01");
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Movements.CountAsync(one => one.WarehouseId == warehouse, Stop)));
        Assert.Equal(["2", "3"], Rows(preview, "To be taken in").Select(row => row[0]));
        Assert.Equal(["There is no warehouse 'Nowhere': name it under Stock, Warehouses, or correct the row.", "'Atlantis' is no country of the ledger: write its name or its two letters."], Rows(preview, "Set aside").Select(row => row[2]));

        var stored = await buyer.SendStandingAsync(preview, address, new Dictionary<string, string>(), "Store");

        Assert.Equal(HttpStatusCode.Redirect, stored.StatusCode);
        var movements = await house.FromLedgerAsync(db => db.Movements.Where(one => one.WarehouseId == warehouse).OrderBy(one => one.On).Select(one => new { one.LotId, one.Kind, one.On, one.Bags, Kg = one.Weighed.Micrograms, one.Document }).ToListAsync(Stop));
        Assert.Equal([(MovementKind.Opening, new DateOnly(2026, 9, 30), 10, 598_500_000_000L), (MovementKind.Opening, new DateOnly(2026, 10, 1), 20, 1_377_200_000_000L)], movements.Select(one => (one.Kind, one.On, one.Bags, one.Kg)));
        Assert.Equal(known, movements[0].LotId);
        var lot = await house.FromLedgerAsync(db => db.Lots.SingleAsync(one => one.Id == movements[1].LotId, Stop));
        Assert.Equal(("OP-2", "Alto Verde", "PE"), (lot.Ref, lot.Name, lot.CountryCode));
        Assert.Equal("Sierra Clara Exports", await house.FromLedgerAsync(db => db.Suppliers.Where(one => one.Id == lot.SupplierId).Select(one => one.Name).SingleAsync(Stop)));
        var posting = await house.FromLedgerAsync(db => db.CostPostings.SingleAsync(one => one.LotId == known, Stop));
        Assert.Equal((Money.Of(3_900m, posting.Amount.Currency), "F-71"), (posting.Amount, posting.Document));
    }

    [Fact]
    public async Task A_script_loads_the_same_and_a_second_time_changes_nothing()
    {
        var warehouse = await AddWarehouseAsync("Script quay");
        using var script = await house.ScriptAsync(Role.Buyer);
        const string file = "Lote;Sacos;Peso\nOP-20;10;600\nOP-21;5;345\n";

        var asked = await LoadAsync(script, file, warehouse, isCommitted: false);
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Movements.CountAsync(one => one.WarehouseId == warehouse, Stop)));
        var taken = await LoadAsync(script, file, warehouse, isCommitted: true);
        using var again = await PostAsync(script, file, warehouse, isCommitted: true);

        Assert.Equal((945m, 945m, true), (asked.GetProperty("weighedKg").GetDecimal(), taken.GetProperty("weighedKg").GetDecimal(), taken.GetProperty("stored").GetBoolean()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.StatusCode);
        Assert.Equal(2, await house.FromLedgerAsync(db => db.Movements.CountAsync(one => one.WarehouseId == warehouse, Stop)));
        var third = await LoadAsync(script, file + "OP-22;1;60\n", warehouse, isCommitted: true);
        Assert.All(third.GetProperty("setAside").EnumerateArray(), row => Assert.Contains("has this opening stock already", row.GetProperty("reason").GetString(), StringComparison.Ordinal));
        Assert.Equal(3, await house.FromLedgerAsync(db => db.Movements.CountAsync(one => one.WarehouseId == warehouse, Stop)));
    }

    [Fact]
    public async Task A_file_that_is_no_stock_list_is_refused_on_the_page_with_what_to_do()
    {
        await AddWarehouseAsync("Refusing quay");

        var answer = await SendFileAsync(await house.BrowserAsync(Role.Buyer), "a;b\n1;2\n");

        Assert.Contains("the first row should say which one holds the lot", (await TestBrowser.PageAsync(answer)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_of_another_kind_that_waits_is_told_of_with_a_sentence()
    {
        await AddWarehouseAsync("Other quay");
        var buyer = await house.BrowserAsync(Role.Buyer);
        var list = await buyer.SendFormAsync("/Offers/Import", new Dictionary<string, string> { ["Input.Supplier"] = "Quay Traders" }, null, [("Input.File", "list.csv", Encoding.UTF8.GetBytes("Ref;Country;Score;USD/kg\nP-1;Kenya;87;9.85\n"))]);
        var id = list.Headers.Location!.OriginalString.Split('/', '?').First(part => Guid.TryParse(part, out _));

        Assert.Contains("the first row should say", (await buyer.ReadAsync($"/Stock/Opening?file={id}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_empty_workbook_has_headings_that_the_ledger_reads()
    {
        var answer = await (await house.BrowserAsync(Role.Buyer)).Client.GetAsync(new Uri("/Stock/Opening?handler=Empty", UriKind.Relative), Stop);
        using var workbook = new ClosedXML.Excel.XLWorkbook(await answer.Content.ReadAsStreamAsync(Stop));

        var headings = workbook.Worksheets.Single().Row(1).CellsUsed().Select(cell => cell.GetString()).ToList();
        Assert.Equal(Enum.GetValues<Domain.Stock.Reading.OpeningColumn>(), headings.Select(heading => Domain.Stock.Reading.OpeningWords.Meaning(heading)!.Value));
    }

    private static Task<HttpResponseMessage> SendFileAsync(TestBrowser buyer, string file) =>
        buyer.SendFormAsync("/Stock/Opening", new Dictionary<string, string>(), "Read", [("Input.File", "stock.csv", Encoding.UTF8.GetBytes(file))]);

    private static async Task<JsonElement> LoadAsync(HttpClient script, string file, Domain.Id<Warehouse> warehouse, bool isCommitted)
    {
        using var answer = await PostAsync(script, file, warehouse, isCommitted);
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }

    private static async Task<HttpResponseMessage> PostAsync(HttpClient script, string file, Domain.Id<Warehouse> warehouse, bool isCommitted)
    {
        using var form = new MultipartFormDataContent
        {
            { new StringContent(file), "file", "stock.csv" }, { new StringContent($"{warehouse}"), "warehouseId" }, { new StringContent("2026-10-01"), "on" }, { new StringContent(isCommitted ? "true" : "false"), "commit" },
        };
        return await script.PostAsync(new Uri("/api/stock/opening", UriKind.Relative), form, Stop);
    }

    private static IEnumerable<string[]> Rows(IHtmlDocument page, string title) =>
        page.QuerySelectorAll(".table-scroll").Single(box => box.GetAttribute("aria-label") == title).QuerySelector<IHtmlTableElement>("table")!.Bodies[0].Rows
            .Select(row => row.Cells.Select(cell => cell.TextContent.Trim()).ToArray());

    private Task<Domain.Id<Warehouse>> AddWarehouseAsync(string name) => house.FromLedgerAsync(async db =>
    {
        var warehouse = new Warehouse(name);
        db.Add(warehouse);
        await db.SaveChangesAsync(Stop);
        return warehouse.Id;
    });

    private Task<Domain.Id<Lot>> AddLotAsync(string reference, string name) => house.FromLedgerAsync(async db =>
    {
        var lot = new Lot(reference, name);
        db.Add(lot);
        await db.SaveChangesAsync(Stop);
        return lot.Id;
    });
}
