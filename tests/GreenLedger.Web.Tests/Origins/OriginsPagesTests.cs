using System.Net;
using AngleSharp.Html.Dom;
using ClosedXML.Excel;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Origins;

public sealed class OriginsPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("sort=-name", "Kiamati,Alto Verde")]
    [InlineData("sort=lots", "Alto Verde,Kiamati")]
    [InlineData("origin=PE", "Alto Verde")]
    [InlineData("search=kia", "Kiamati")]
    public async Task Producers_are_filtered_and_sorted_by_the_address(string query, string names)
    {
        var browser = await LoadedAsync();

        var page = await browser.ReadAsync("/Origins?" + query);

        Assert.Equal(names, string.Join(',', page.QuerySelectorAll("tbody th a").Select(link => link.TextContent)));
    }

    [Fact]
    public async Task Producers_leave_as_a_workbook()
    {
        var browser = await LoadedAsync();

        var bytes = await browser.Client.GetByteArrayAsync(new Uri("/Origins?search=kiamati&handler=Workbook", UriKind.Relative), Cancel);

        using var book = new XLWorkbook(new MemoryStream(bytes));
        Assert.Equal("Kiamati", book.Worksheet(1).Cell("A2").GetString());
        Assert.True(book.Worksheet(1).Cell("A3").IsEmpty());
    }

    [Fact]
    public async Task A_producer_with_a_wrong_altitude_keeps_what_was_typed()
    {
        var browser = await LoadedAsync();
        var id = await house.FromLedgerAsync(db => db.Producers.Where(one => one.Name == "Alto Verde").Select(one => one.Id).SingleAsync(Cancel));

        var answer = await browser.SendFormAsync(
            $"/Origins/EditProducer/{id}", new Dictionary<string, string> { ["Input.Place"] = "Typed Hill", ["Input.AltitudeFrom"] = "2100", ["Input.AltitudeTo"] = "1200" });

        var page = await TestBrowser.PageAsync(answer);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(("Typed Hill", "2100"), (ValueOf(page, "Place"), ValueOf(page, "AltitudeFrom")));
        Assert.NotNull(page.QuerySelector("[data-errors]"));
    }

    [Fact]
    public async Task A_producer_that_is_changed_shows_its_lots_and_history()
    {
        var browser = await LoadedAsync();
        var id = await house.FromLedgerAsync(db => db.Producers.Where(one => one.Name == "Kiamati").Select(one => one.Id).SingleAsync(Cancel));

        var answer = await browser.SendFormAsync($"/Origins/EditProducer/{id}", new Dictionary<string, string> { ["Input.Place"] = "Karithathi" });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await browser.ReadAsync($"/Origins/Producer/{id}");
        Assert.Equal(["R-1", "R-2"], page.QuerySelectorAll("[aria-label=Lots] tbody th").Select(cell => cell.TextContent.Trim()).Order());
        Assert.Contains("Karithathi", page.QuerySelector(".history")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_word_that_means_another_method_already_is_refused_and_kept()
    {
        var browser = await house.BrowserAsync(Role.Buyer);

        var answer = await browser.SendFormAsync(
            "/Origins/NewProcessMethod", new Dictionary<string, string> { ["Input.Name"] = "moon dried", ["Input.Synonyms"] = "lavado" });

        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains("belongs to washed already", page.QuerySelector("#Input_Synonyms_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("moon dried", ValueOf(page, "Name"));
        Assert.Equal(0, await house.FromLedgerAsync(db => db.ProcessMethods.CountAsync(method => method.Name == "moon dried", Cancel)));
    }

    [Fact]
    public async Task A_country_with_a_bag_of_nothing_keeps_what_was_typed()
    {
        var browser = await house.BrowserAsync(Role.Buyer);

        var answer = await browser.SendFormAsync("/Origins/EditCountry/KE", new Dictionary<string, string> { ["Input.UsualBagKg"] = "0", ["Input.OtherNames"] = "Kenia, Quénia" });

        var page = await TestBrowser.PageAsync(answer);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(("0", "Kenia, Quénia"), (ValueOf(page, "UsualBagKg"), ValueOf(page, "OtherNames")));
        Assert.Contains("between 1 and 2000 kg", page.QuerySelector("#Input_UsualBagKg_error")!.TextContent, StringComparison.Ordinal);
    }

    private static string? ValueOf(IHtmlDocument page, string field) => page.QuerySelector($"[name='Input.{field}']")!.GetAttribute("value");

    private async Task<TestBrowser> LoadedAsync()
    {
        using var script = await LoadedList.LoadAsync(house);
        return await house.BrowserAsync(Role.Buyer);
    }
}
