using System.Net;
using System.Net.Http.Headers;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.People;

public sealed class TokensTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    [Fact]
    public async Task A_token_is_shown_once_and_kept_as_a_fingerprint()
    {
        var browser = await house.BrowserAsync(Role.Buyer);

        var token = await MakeAsync(browser, "weekly prices");

        Assert.StartsWith("gl_", token, StringComparison.Ordinal);
        Assert.Null((await browser.ReadAsync("/Myself/Tokens")).QuerySelector("#fresh-token"));
        var stored = await house.FromLedgerAsync(db => db.ApiTokens.SingleAsync(one => one.Name == "weekly prices"));
        Assert.DoesNotContain(token, stored.Hash, StringComparison.Ordinal);
        Assert.Equal(64, stored.Hash.Length);
    }

    [Fact]
    public async Task A_revoked_token_opens_nothing()
    {
        var browser = await house.BrowserAsync(Role.Viewer);
        var script = Script(await MakeAsync(browser, "to be revoked"));
        var before = await script.GetAsync("/api/nothing-here");

        await browser.SendFormAsync("/Myself/Tokens", new Dictionary<string, string>(), handler: "Revoke");
        var after = await script.GetAsync("/api/nothing-here");

        Assert.Equal(HttpStatusCode.NotFound, before.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, after.StatusCode);
    }

    [Fact]
    public async Task The_last_use_of_a_token_is_kept()
    {
        var script = Script(await MakeAsync(await house.BrowserAsync(Role.LeadCupper), "used today"));

        await script.GetAsync("/api/nothing-here");

        var stored = await house.FromLedgerAsync(db => db.ApiTokens.SingleAsync(one => one.Name == "used today"));
        Assert.NotNull(stored.LastUsedAt);
    }

    [Fact]
    public async Task An_answer_of_the_api_that_finds_nothing_is_a_problem_document()
    {
        var answer = await (await house.ScriptAsync(Role.Buyer)).GetAsync("/api/nothing-here");

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
    }

    private static async Task<string> MakeAsync(TestBrowser browser, string name)
    {
        await browser.SendFormAsync("/Myself/Tokens", new Dictionary<string, string> { ["Input.Name"] = name });
        var page = await browser.ReadAsync("/Myself/Tokens");
        return page.QuerySelector("#fresh-token")!.TextContent;
    }

    private HttpClient Script(string token)
    {
        var client = house.CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false });
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", token);
        return client;
    }
}
