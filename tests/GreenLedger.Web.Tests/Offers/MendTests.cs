using System.Net;
using System.Text;
using ClosedXML.Excel;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Offers;

/// <summary>A list with one good row and one whose score and price cannot be.</summary>
public sealed class MendTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string List = "Ref;Country;Process;Score;Bags;kg/bag;USD/kg\nM-1;Kenya;washed;87;40;60;9.85\n=M-2;Peru;natural;186;12;69;to be named\n";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_was_typed_stays_and_each_fault_stands_beside_its_field()
    {
        var (browser, address) = await SetAsideAsync("Typed Traders");

        var answer = await browser.SendFormAsync(address, new Dictionary<string, string> { ["Input.Cells[3].Text"] = "286", ["Input.Cells[0].Text"] = "M-2b" });

        var page = await TestBrowser.PageAsync(answer);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("286", page.QuerySelector("[name='Input.Cells[3].Text']")!.GetAttribute("value"));
        Assert.Equal("M-2b", page.QuerySelector("[name='Input.Cells[0].Text']")!.GetAttribute("value"));
        Assert.Contains("above 100", page.QuerySelector("#Input_Cells_3__Text_error")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("not a number", page.QuerySelector("#Input_Cells_6__Text_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Offers.CountAsync(offer => offer.Ref == "M-2b")));
    }

    [Fact]
    public async Task A_mended_row_is_taken_in_and_its_list_says_so()
    {
        var (browser, address) = await SetAsideAsync("Mended Traders");
        var mended = new Dictionary<string, string> { ["Input.Cells[0].Text"] = "M-2", ["Input.Cells[3].Text"] = "86", ["Input.Cells[6].Text"] = "7.10" };

        var answer = await browser.SendFormAsync(address, mended);

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var list = await browser.ReadAsync(answer.Headers.Location!.ToString());
        Assert.Contains("M-2 is a new offer", list.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("All of them have been mended", list.Body.TextContent, StringComparison.Ordinal);
        var offer = await house.FromLedgerAsync(db => db.Offers.SingleAsync(one => one.Ref == "M-2"));
        Assert.Equal((828m, 7.10m), (offer.Quantity.Kilograms, offer.Price!.Value.Amount)); // worked by hand: 12 bags of 69 kg
        var again = await browser.ReadAsync(address);
        Assert.Equal($"/Offers/Offer/{offer.Id}", again.QuerySelector(".note-done a")!.GetAttribute("href"));
    }

    [Fact]
    public async Task Rows_set_aside_leave_as_a_workbook_and_as_a_text_table_that_hold_no_formula()
    {
        var (browser, address) = await SetAsideAsync("Export Traders");
        var list = (await browser.ReadAsync(address)).QuerySelector("a[href^='/Offers/List/']")!.GetAttribute("href")!;

        var workbook = await browser.Client.GetByteArrayAsync(new Uri(list + "?handler=SetAside", UriKind.Relative), Cancel);
        var text = await browser.Client.GetStringAsync(new Uri(list + "?handler=SetAsideText", UriKind.Relative), Cancel);

        using var book = new XLWorkbook(new MemoryStream(workbook));
        var row = book.Worksheet(1).Row(2);
        Assert.Equal("=M-2", row.Cell(1).GetString());
        Assert.False(row.Cell(1).HasFormula);
        Assert.Equal("Peru", row.Cell(2).GetString());
        Assert.Equal(3, row.Cell(8).GetDouble());
        Assert.Contains("is above 100", row.Cell(10).GetString(), StringComparison.Ordinal);
        Assert.Contains("\r\n'=M-2,Peru,natural,186,12,69,to be named,3,", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_list_received_is_shown_with_its_counts_and_its_file()
    {
        var (browser, _) = await SetAsideAsync("Received Traders");

        var lists = await browser.ReadAsync("/Offers/Lists?search=received%20traders");

        var row = Assert.Single(lists.QuerySelectorAll("tbody tr"));
        Assert.Contains("Received Traders.csv", row.TextContent, StringComparison.Ordinal);
        Assert.Contains("A Buyer", row.TextContent, StringComparison.Ordinal);
        Assert.Equal(["1", "0", "0", "1", "1"], row.QuerySelectorAll("td.number").Select(cell => cell.TextContent.Trim()));
        var file = row.QuerySelector("a[href*='handler=File']")!.GetAttribute("href")!;
        Assert.Equal(List, await browser.Client.GetStringAsync(new Uri(file, UriKind.Relative), Cancel));
    }

    [Fact]
    public async Task The_lists_received_leave_as_a_workbook()
    {
        var (browser, _) = await SetAsideAsync("Workbook Traders");

        var bytes = await browser.Client.GetByteArrayAsync(new Uri("/Offers/Lists?search=workbook&handler=Workbook", UriKind.Relative), Cancel);

        using var book = new XLWorkbook(new MemoryStream(bytes));
        var row = book.Worksheet(1).Row(2);
        Assert.Equal(("Workbook Traders.csv", "Workbook Traders"), (row.Cell(1).GetString(), row.Cell(2).GetString()));
        Assert.Equal([1, 0, 0, 1, 1], Enumerable.Range(4, 5).Select(column => row.Cell(column).GetValue<int>()));
        Assert.True(row.Cell(11).IsEmpty());
    }

    /// <summary>Loads the list for this supplier, and gives the page of the row that it set aside.</summary>
    private async Task<(TestBrowser Browser, string Address)> SetAsideAsync(string supplier)
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        using var content = new MultipartFormDataContent
        {
            { new ByteArrayContent(Encoding.UTF8.GetBytes(List)), "file", supplier + ".csv" },
            { new StringContent(supplier), "supplier" },
            { new StringContent("true"), "commit" },
        };
        var loaded = await script.PostAsync(new Uri("/api/offers/import", UriKind.Relative), content, Cancel);
        Assert.Equal(HttpStatusCode.OK, loaded.StatusCode);
        var row = await house.FromLedgerAsync(async db => await db.SetAsideRows
            .Where(one => db.OfferLists.Any(list => list.Id == one.ListId && list.FileName == supplier + ".csv")).SingleAsync());
        return (await house.BrowserAsync(Role.Buyer), $"/Offers/Mend/{row.Id}");
    }
}
