using System.Net;
using System.Text;
using ClosedXML.Excel;
using CsvHelper;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Summaries;

/// <summary>Extracts read back with CsvHelper and ClosedXML, which have not written them.</summary>
public sealed class ExtractsTests(DemoSummary demo) : IClassFixture<DemoSummary>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static TheoryData<string> Tables => ["lots", "samples", "cuppings", "contracts", "shipments", "arrivals", "decisions"];

    private HouseFixture House => demo.House;

    [Theory]
    [MemberData(nameof(Tables))]
    public async Task The_workbook_the_text_and_the_API_hold_the_same_rows(string table)
    {
        var buyer = (await House.BrowserAsync(Role.Buyer)).Client;
        using var script = await House.ScriptAsync(Role.Viewer);

        var text = Records(await buyer.GetByteArrayAsync($"/Summaries/Extracts?table={table}&handler=Text", Stop));
        var sent = Records(await script.GetByteArrayAsync($"/api/summaries/extracts/{table}", Stop));
        using var book = new XLWorkbook(await buyer.GetStreamAsync($"/Summaries/Extracts?table={table}&handler=Workbook", Stop));
        var sheet = book.Worksheets.Single();

        Assert.True(text.Count > 1, "the demo has rows of every table");
        Assert.Equal(text, sent);
        Assert.Equal(text.Count, sheet.LastRowUsed()!.RowNumber());
        Assert.Equal(text[0], sheet.Row(1).CellsUsed().Select(cell => cell.GetString()));
        Assert.DoesNotContain(sheet.CellsUsed(), cell => cell.HasFormula);
    }

    [Fact]
    public async Task A_name_that_a_spreadsheet_would_compute_stays_a_name()
    {
        await House.InLedgerAsync(async db =>
        {
            db.Add(new Lot("=1+1", "=HYPERLINK(\"x\")", null));
            await db.SaveChangesAsync(Stop);
        });
        var buyer = (await House.BrowserAsync(Role.Buyer)).Client;

        var text = Records(await buyer.GetByteArrayAsync("/Summaries/Extracts?table=lots&handler=Text", Stop));
        using var book = new XLWorkbook(await buyer.GetStreamAsync("/Summaries/Extracts?table=lots&handler=Workbook", Stop));

        Assert.Contains(text, row => row[0] == "'=1+1");
        var cell = book.Worksheets.Single().Column(1).CellsUsed().Single(one => one.GetString() == "=1+1");
        Assert.False(cell.HasFormula);
    }

    [Fact]
    public async Task A_table_that_is_none_and_days_the_wrong_way_round_are_said()
    {
        var buyer = await House.BrowserAsync(Role.Buyer);
        using var script = await House.ScriptAsync(Role.Buyer);

        var none = await script.GetAsync(new Uri("/api/summaries/extracts/wishes", UriKind.Relative), Stop);
        var round = await buyer.ReadAsync("/Summaries/Extracts?table=arrivals&from=2026-05-02&until=2026-05-01&handler=Text");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, none.StatusCode);
        Assert.Contains("turn them round", round.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("2026-05-02", round.QuerySelector("#from")!.GetAttribute("value"));
    }

    private static List<string[]> Records(byte[] text)
    {
        using var reader = CsvReader.FromText(Encoding.UTF8.GetString(text).TrimStart('\uFEFF'), new CsvReaderOptions { Separator = ',', HasHeader = false });
        var rows = new List<string[]>();
        while (reader.Read())
        {
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        }

        return rows;
    }
}
