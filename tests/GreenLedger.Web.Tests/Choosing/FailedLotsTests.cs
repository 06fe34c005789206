using System.Text;
using AngleSharp.Html.Dom;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Choosing;

/// <summary>Pages of lots that fail a gate: one of the running example (F, no score) and thirty of a list without score and cost.</summary>
public sealed class FailedLotsTests(OpenShop shop) : IClassFixture<OpenShop>
{
    [Fact]
    public async Task Lots_that_fail_a_gate_have_pages_of_their_own_below_the_ranked_ones()
    {
        await LoadAsync();
        var buyer = await shop.House.BrowserAsync(Role.Buyer);

        var first = await buyer.ReadAsync("/Choosing");
        var next = first.QuerySelector("details:has(#failed) .pager a")!.GetAttribute("href")!;
        var second = await buyer.ReadAsync(next);
        var beyond = await buyer.ReadAsync("/Choosing?below=9");

        Assert.Contains("below=2", next, StringComparison.Ordinal);
        // Fewest gates first, then by reference, twenty-five a page.
        Assert.Equal(["F", .. Enumerable.Range(1, 24).Select(NameOf)], Failed(first));
        Assert.Equal(Enumerable.Range(25, 6).Select(NameOf), Failed(second));
        Assert.Equal(Failed(second), Failed(beyond));
        Assert.Equal(5, second.QuerySelectorAll("#ranked .rank").Length);
        Assert.False(first.QuerySelector("details:has(#failed)")!.HasAttribute("open"));
        Assert.True(second.QuerySelector("details:has(#failed)")!.HasAttribute("open"));
        Assert.EndsWith("/Choosing#failed", second.QuerySelector("details:has(#failed) .pager a")!.GetAttribute("href"), StringComparison.Ordinal);
    }

    private static string NameOf(int number) => $"N-{number:00}";

    private static IEnumerable<string> Failed(IHtmlDocument page) =>
        page.QuerySelectorAll("details:has(#failed) tbody th > a").Select(link => link.TextContent);

    private async Task LoadAsync()
    {
        var rows = Enumerable.Range(1, 30).Select(number => $"{NameOf(number)};Kenya;washed;40;60;9.85");
        using var script = await shop.House.ScriptAsync(Role.Buyer);
        using var form = new MultipartFormDataContent
        {
            { new StringContent("Quay Traders"), "supplier" },
            { new StringContent("true"), "commit" },
            { new ByteArrayContent(Encoding.UTF8.GetBytes("Ref;Country;Process;Bags;kg/bag;USD/kg\n" + string.Join('\n', rows) + "\n")), "file", "many.csv" },
        };
        (await script.PostAsync(new Uri("/api/offers/import", UriKind.Relative), form)).EnsureSuccessStatusCode();
    }
}
