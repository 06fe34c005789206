using System.Net;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Archive;

/// <summary>A house leaves by its page or its API and is opened again from the page of an empty ledger.</summary>
public sealed class ArchivePagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string NewPassword = "nine sacks upon the quay";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_the_page_gives_an_empty_ledger_reads_back_and_its_administrator_gets_in()
    {
        var archive = await TakeAsync();
        await using var empty = new HouseFixture();
        var visitor = empty.Visitor();

        var answer = await ReadBackAsync(visitor, archive, HouseFixture.OwnerEmail);

        Assert.Equal("/", answer.Headers.Location?.OriginalString);
        Assert.Equal("Sorrel Roasters", (await visitor.ReadAsync("/")).QuerySelector("h1")!.TextContent.Trim());
        var people = await visitor.ReadAsync("/People");
        Assert.Equal(["signs in"], people.QuerySelectorAll("tbody tr").Where(row => row.TextContent.Contains("Imke Adler", StringComparison.Ordinal)).Select(row => row.Children[^1].TextContent));
        Assert.All(people.QuerySelectorAll("tbody tr").Where(row => row.TextContent.Contains("A Buyer", StringComparison.Ordinal)), row => Assert.Equal("invited", row.Children[^1].TextContent));
        Assert.True(await empty.FromLedgerAsync(db => db.ArchiveTakings.AnyAsync(Stop)), "the archive knows of its own taking");
    }

    [Fact]
    public async Task A_house_that_is_open_reads_nothing_back_whoever_asks()
    {
        await house.OpenHouseAsync();
        using var form = new MultipartFormDataContent { { new ByteArrayContent([1, 2, 3]), "Input.File", "whole-house.zip" } };

        var shown = await house.Visitor().Client.GetAsync("/Entrance/ReadBack", Stop);
        var sent = await house.Visitor().Client.PostAsync("/Entrance/ReadBack", form, Stop);

        Assert.Equal("/Entrance/SignIn", shown.Headers.Location!.OriginalString);
        Assert.Equal("/Entrance/SignIn", sent.Headers.Location!.OriginalString);
    }

    [Fact]
    public async Task What_cannot_be_read_and_who_is_no_administrator_are_said_and_the_ledger_stays_empty()
    {
        var archive = await TakeAsync();
        await using var empty = new HouseFixture();

        var broken = await TestBrowser.PageAsync(await ReadBackAsync(empty.Visitor(), archive[..(archive.Length / 2)], HouseFixture.OwnerEmail));
        var stranger = await TestBrowser.PageAsync(await ReadBackAsync(empty.Visitor(), archive, HouseFixture.EmailOf(Role.Buyer)));

        Assert.Contains("cannot be read as a ZIP file", broken.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("No administrator of the house", stranger.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HouseFixture.EmailOf(Role.Buyer), stranger.QuerySelector("#Input_Email")!.GetAttribute("value"));
        Assert.Equal(0, await empty.FromLedgerAsync(db => db.People.CountAsync(Stop)));
    }

    [Fact]
    public async Task A_script_takes_the_same_archive_and_each_taking_is_written_down()
    {
        using var script = await house.ScriptAsync(Role.Administrator);
        using var buyers = await house.ScriptAsync(Role.Buyer);
        var before = await house.FromLedgerAsync(db => db.ArchiveTakings.CountAsync(Stop));

        var answer = await script.GetAsync("/api/archive", Stop);
        var refused = await buyers.GetAsync("/api/archive", Stop);

        Assert.Equal("application/zip", answer.Content.Headers.ContentType!.MediaType);
        Assert.Matches("^whole-house-.*[.]zip$", answer.Content.Headers.ContentDisposition!.FileName!.Trim('"'));
        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        Assert.Equal(before + 1, await house.FromLedgerAsync(db => db.ArchiveTakings.CountAsync(Stop)));
        var page = await (await house.BrowserAsync(Role.Administrator)).ReadAsync("/Archive");
        Assert.Contains(page.QuerySelectorAll("tbody tr"), row => row.TextContent.Contains("A Administrator", StringComparison.Ordinal));
    }

    private async Task<byte[]> TakeAsync()
    {
        var administrator = await house.BrowserAsync(Role.Administrator);
        var answer = await administrator.PostAsync("/Archive");
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/zip", answer.Content.Headers.ContentType!.MediaType);
        return await answer.Content.ReadAsByteArrayAsync(Stop);
    }

    private static async Task<HttpResponseMessage> ReadBackAsync(TestBrowser visitor, byte[] archive, string email) => await visitor.SendFormAsync(
        "/Entrance/ReadBack",
        new Dictionary<string, string> { ["Input.Email"] = email, ["Input.Password"] = NewPassword },
        files: [("Input.File", "whole-house.zip", archive)]);
}
