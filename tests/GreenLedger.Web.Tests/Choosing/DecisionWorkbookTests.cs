using ClosedXML.Excel;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Choosing;

/// <summary>The list of decisions taken along and read back; figures are those of handbook quality.md section 5.</summary>
public sealed class DecisionWorkbookTests(OpenShop shop) : IClassFixture<OpenShop>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Decisions_leave_as_a_workbook_with_numbers_as_the_list_is_narrowed()
    {
        var buyer = await shop.House.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync(Decide("A"), new Dictionary<string, string> { ["Input.Outcome"] = "Buy", ["Input.QuantityKg"] = "600", ["Input.Note"] = "=1+1" });
        await buyer.SendFormAsync(Decide("B"), new Dictionary<string, string> { ["Input.Outcome"] = "Decline", ["Input.Reason"] = "The sample was stale." });

        using var all = await TakenAsync(buyer, "/Choosing/Decisions");
        using var bought = await TakenAsync(buyer, "/Choosing/Decisions?Outcome=Buy");

        Assert.Equal(["A", "B"], all.Worksheet(1).Column(1).CellsUsed().Skip(1).Select(cell => cell.GetString()).Order());
        var row = Assert.Single(bought.Worksheet(1).RowsUsed().Skip(1));
        var heads = bought.Worksheet(1).Row(1).CellsUsed().ToDictionary(cell => cell.GetString(), cell => cell.Address.ColumnNumber);
        IXLCell Of(string head) => row.Cell(heads[head]);
        Assert.Equal((600.0, 1.0, 86.5, 8.8), (Of("kg").GetDouble(), Of("Rank").GetDouble(), Of("Score, points").GetDouble(), Of("Landed cost per kg").GetDouble()));
        Assert.Equal(("buy", "buy", "EUR", "House"), (Of("Decision").GetString(), Of("Advised").GetString(), Of("Currency").GetString(), Of("Rules").GetString()));
        Assert.Equal((false, "=1+1"), (Of("Note").HasFormula, Of("Note").GetString()));
        Assert.Equal(shop.Market.Today.ToDateTime(TimeOnly.MinValue), Of("On").GetDateTime());
    }

    private string Decide(string name) => $"/Choosing/Decide/{shop.Market.OfferOf(name).Id}";

    /// <summary>By the link that the page shows.</summary>
    private static async Task<XLWorkbook> TakenAsync(TestBrowser buyer, string address)
    {
        var link = (await buyer.ReadAsync(address)).QuerySelector("a[href*='handler=Workbook']")!.GetAttribute("href")!;
        return new XLWorkbook(new MemoryStream(await buyer.Client.GetByteArrayAsync(new Uri(link, UriKind.Relative), Stop)));
    }
}
