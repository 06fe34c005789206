using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Summaries;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Stock;

/// <summary>Pages of the stock that want a whole house: the demo's.</summary>
public sealed class DemoStockTests(DemoSummary demo) : IClassFixture<DemoSummary>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_lot_that_is_in_stock_and_on_offer_stands_once_among_what_could_replace_a_component()
    {
        var component = await demo.House.FromLedgerAsync(db => db.Purposes.Where(purpose => purpose.Blend != null && purpose.IsInUse).Select(purpose => purpose.Name).FirstAsync(Stop));
        var buyer = await demo.House.BrowserAsync(Role.Buyer);
        var (stood, both) = (new List<string>(), 0);

        for (var number = 1; ; number++)
        {
            var page = await buyer.ReadAsync($"/Stock/Blends?component={Uri.EscapeDataString(component)}&PageNumber={number}");
            var rows = page.QuerySelectorAll($"[aria-label='In place of {component}'] tbody tr");
            stood.AddRange(rows.Where(row => row.QuerySelector("td")!.TextContent.Contains("stock", StringComparison.Ordinal)).Select(row => row.QuerySelector("th a")!.TextContent));
            both += rows.Count(row => row.QuerySelector("td")!.TextContent.Contains("shortlist", StringComparison.Ordinal) && row.QuerySelector("td")!.TextContent.Contains("stock", StringComparison.Ordinal));
            if (page.QuerySelector("a[rel=next]") is null)
            {
                break;
            }
        }

        Assert.NotEmpty(stood);
        Assert.Equal(stood.Distinct().Count(), stood.Count);
        Assert.True(both > 0, "the demo has lots both in stock and on offer");
    }
}
