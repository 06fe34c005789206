using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using AngleSharp.Html.Dom;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Stock.Reading;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Contracts;

/// <summary>What a house had bought before its ledger, loaded from a file: the whole way of a buyer, and the same by a script.</summary>
public sealed class EarlierContractsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string Heading = "Contract;Supplier;Contract date;Lot;Name;Origin;Bags;Bag weight (kg);Incoterm;Place;Shipment until;Price;Futures month;Differential;Lots fixed;Fixed at;Bags shipped;Shipped on;Port of loading;Port of destination;Arrived on;Received (kg);Landed cost per kg;Left (kg)\n";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_buyer_sees_what_each_row_becomes_takes_it_in_and_finds_it_in_position_summary_and_stock()
    {
        var warehouse = await AddWarehouseAsync("Earlier quay");
        var buyer = await house.BrowserAsync(Role.Buyer);
        var file = Heading
            + "E25-1;Serra do Mel;2026-08-03;EM-1;Serra do Mel;Brazil;640;59;FOB;Santos;2026-12-31;;KCH27;12;1;281.40;;;;;;;;\n"
            + "E25-2;Serra do Mel;2026-07-01;EM-2;Peaberry;Brazil;320;59;FOB;Santos;2026-11-30;3.85 USD/lb;;;;;200;2026-10-20;BRSSZ;DEHAM;;;;\n"
            + "E24-7;Sierra Clara;2026-02-14;EC-9;Sierra Clara;Peru;275;69;FOB;Callao;;8 EUR/kg;;;;;;;;;2026-05-11;18941.3;10.12;1377.2\n"
            + "E24-8;Sierra Clara;2026-02-14;EC-10;Decaf;Atlantis;100;69;FOB;Callao;;9 EUR/kg;;;;;;;;;2026-05-11;;;\n";

        var sent = await SendFileAsync(buyer, file);
        var address = sent.Headers.Location!.OriginalString;
        var preview = await buyer.ReadAsync($"{address}&Input.WarehouseId={warehouse}&Input.On=2026-10-01");
        Assert.Equal((0, 0), await house.FromLedgerAsync(async db => (await db.Contracts.CountAsync(one => one.Ref.StartsWith("E2"), Stop), await db.Suppliers.CountAsync(one => one.Name == "Serra do Mel", Stop))));
        Assert.Equal(["open contract ready to ship", "open contract part shipped", "past purchase closed"], Rows(preview, "taken").Select(row => row[1]));
        Assert.Contains("new supplier", Rows(preview, "taken").First()[0], StringComparison.Ordinal);
        Assert.Equal(["5", "Origin", "'Atlantis' is no country of the ledger: write its name or its two letters."], Rows(preview, "aside").Single()[..3]);

        var stored = await buyer.SendStandingAsync(preview, address, new Dictionary<string, string>(), "Store");

        Assert.Equal(HttpStatusCode.Redirect, stored.StatusCode);
        var contracts = await house.FromLedgerAsync(db => db.Contracts.Where(one => one.Ref.StartsWith("E2")).OrderBy(one => one.Ref).Select(one => new { one.Ref, one.Goods, one.Price, one.NetWeight.Micrograms, one.OpenMonth }).ToListAsync(Stop));
        // Worked by hand: 275 × 69, 640 × 59 and 320 × 59 kg.
        Assert.Equal(
            [("E24-7", GoodsState.Closed, 18_975m), ("E25-1", GoodsState.ReadyToShip, 37_760m), ("E25-2", GoodsState.PartShipped, 18_880m)],
            contracts.Select(one => (one.Ref, one.Goods, one.Micrograms / 1_000_000_000m)));
        var movement = await house.FromLedgerAsync(db => db.Movements.SingleAsync(one => one.WarehouseId == warehouse, Stop));
        Assert.Equal((MovementKind.Opening, new DateOnly(2026, 10, 1), Weight.FromKilograms(1_377.2m), "E24-7"), (movement.Kind, movement.On, movement.Weighed, movement.Document));
        // Worked by hand: 1,377.2 kg × 10.12 EUR/kg.
        Assert.Equal(13_937.26m, (await house.FromLedgerAsync(db => db.CostPostings.SingleAsync(one => one.LotId == movement.LotId, Stop))).House.Amount);
        Assert.Equal("E25-1", Rows(await buyer.ReadAsync("/Contracts?Month=KCH27"), null).Single()[0].Split(' ')[0]);
        Assert.Contains("KCH27", (await buyer.ReadAsync("/Summaries/Position")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        var landed = (await buyer.ReadAsync("/Summaries/Rows?Figure=Landed&From=2026-05-01&Until=2026-05-31")).QuerySelector("main")!.TextContent;
        Assert.Contains("from before", landed, StringComparison.Ordinal);
        // 18,941.3 kg × 10.12 EUR/kg = 191,685.956.
        Assert.Contains("191,685.96", landed, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_loaded_twice_is_told_of_and_doubles_nothing()
    {
        var buyer = await house.BrowserAsync(Role.Buyer);
        const string file = Heading + "T25-1;Twice Exports;2026-08-03;TW-1;Twice;Brazil;640;59;FOB;Santos;2026-12-31;8 EUR/kg;;;;;;;;;;;;\n";
        var first = (await SendFileAsync(buyer, file)).Headers.Location!.OriginalString;
        await buyer.SendStandingAsync(await buyer.ReadAsync(first), first, new Dictionary<string, string>(), "Store");

        var again = (await SendFileAsync(buyer, file)).Headers.Location!.OriginalString;
        var preview = await buyer.ReadAsync(again);

        Assert.Contains("This very file was taken in already", preview.QuerySelector(".note-caution")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("The ledger has a contract T25-1 already: it is left as it stands.", Rows(preview, "aside").Single()[2]);
        Assert.Null(preview.QuerySelector("h2#taken"));
        Assert.Equal(1, await house.FromLedgerAsync(db => db.Contracts.CountAsync(one => one.Ref == "T25-1", Stop)));
    }

    [Fact]
    public async Task A_script_loads_the_same_and_stores_only_when_it_says_so()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        const string file = "Contrato;Proveedor;Fecha de contrato;Lote;Sacos;Peso neto;Precio;Embarque\nS25-1;Finca Exports;2026-08-03;SF-1;275;18975;4,10 USD/lb;diciembre 2026\n";

        var aside = await LoadAsync(script, file, isCommitted: false, incoterm: null);
        var asked = await LoadAsync(script, file, isCommitted: false);
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Contracts.CountAsync(one => one.Ref == "S25-1", Stop)));
        var taken = await LoadAsync(script, file, isCommitted: true);
        using var again = await PostAsync(script, file, isCommitted: true);

        Assert.Contains("The delivery rule is missing", aside.GetProperty("setAside")[0].GetProperty("reason").GetString(), StringComparison.Ordinal);
        Assert.Equal((18_975m, false, true), (asked.GetProperty("netKg").GetDecimal(), asked.GetProperty("stored").GetBoolean(), taken.GetProperty("stored").GetBoolean()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.StatusCode);
        var contract = await script.GetFromJsonAsync<JsonElement>(new Uri($"/api/contracts/{taken.GetProperty("contracts")[0].GetProperty("id").GetGuid()}", UriKind.Relative), Stop);
        Assert.Equal("S25-1", contract.GetProperty("ref").GetString());
    }

    [Fact]
    public async Task A_file_that_is_no_contract_list_is_refused_with_what_to_do()
    {
        var answer = await SendFileAsync(await house.BrowserAsync(Role.Buyer), "a;b\n1;2\n");

        Assert.Contains("the first row should say which one holds the number of the contract", (await TestBrowser.PageAsync(answer)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_empty_workbook_has_headings_that_the_ledger_reads()
    {
        var answer = await (await house.BrowserAsync(Role.Buyer)).Client.GetAsync(new Uri("/Contracts/Earlier?handler=Empty", UriKind.Relative), Stop);
        using var workbook = new ClosedXML.Excel.XLWorkbook(await answer.Content.ReadAsStreamAsync(Stop));

        var headings = workbook.Worksheets.Single().Row(1).CellsUsed().Select(cell => cell.GetString()).ToList();
        Assert.Equal(Enum.GetValues<EarlierColumn>(), headings.Select(heading => EarlierWords.Meaning(heading)!.Value));
    }

    private static Task<HttpResponseMessage> SendFileAsync(TestBrowser buyer, string file) =>
        buyer.SendFormAsync("/Contracts/Earlier", new Dictionary<string, string>(), "Read", [("Input.File", "contracts.csv", Encoding.UTF8.GetBytes(file))]);

    private static async Task<JsonElement> LoadAsync(HttpClient script, string file, bool isCommitted, string? incoterm = "Fob")
    {
        using var answer = await PostAsync(script, file, isCommitted, incoterm);
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }

    private static async Task<HttpResponseMessage> PostAsync(HttpClient script, string file, bool isCommitted, string? incoterm = "Fob")
    {
        using var form = new MultipartFormDataContent { { new StringContent(file), "file", "contracts.csv" }, { new StringContent(isCommitted ? "true" : "false"), "commit" } };
        if (incoterm is not null)
        {
            form.Add(new StringContent(incoterm), "incoterm");
        }

        return await script.PostAsync(new Uri("/api/contracts/earlier", UriKind.Relative), form, Stop);
    }

    /// <summary>The rows of the table under a heading; of the first table where none is named.</summary>
    private static IEnumerable<string[]> Rows(IHtmlDocument page, string? heading) =>
        page.QuerySelectorAll(heading is null ? ".table-scroll table" : $".table-scroll[aria-labelledby={heading}] table").OfType<IHtmlTableElement>().First().Bodies[0].Rows
            .Select(row => row.Cells.Select(cell => string.Join(' ', cell.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))).ToArray());

    private Task<Domain.Id<Warehouse>> AddWarehouseAsync(string name) => house.FromLedgerAsync(async db =>
    {
        var warehouse = new Warehouse(name);
        db.Add(warehouse);
        await db.SaveChangesAsync(Stop);
        return warehouse.Id;
    });
}
