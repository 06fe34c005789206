using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Arrivals;
using GreenLedger.Web.Tests.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Due;

public sealed class DueTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static readonly Uri Address = new("/api/due", UriKind.Relative);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_buyer_sees_what_contracts_and_shipments_make_due_on_the_page_and_by_script()
    {
        var contract = await SignedContract.StoreAsync(house, ApprovalRule.Replace);
        var lot = await ArrivedLot.FillAsync(house);

        var lines = await LinesAsync(Role.Buyer);
        var page = (await (await house.BrowserAsync(Role.Buyer)).ReadAsync("/Due?within=0")).QuerySelector("main")!.TextContent;

        Assert.Contains(lines, line => Is(line, "approval", contract.Id.Value) && line.GetProperty("on").GetString() == "2026-09-30");
        Assert.Contains(lines, line => Is(line, "shipment", contract.Id.Value) && line.GetProperty("what").GetString() == $"ship 550 bags, 37,950 kg, of {contract.Ref}");
        // Discharged 28 days after 28 September by ArrivedLot; the house receives within 7 days: 2 November.
        Assert.Contains(lines, line => Is(line, "receipt", lot.AfloatLot.Value) && line.GetProperty("on").GetString() == "2026-11-02");
        Assert.Contains($"ship 550 bags, 37,950 kg, of {contract.Ref}", page, StringComparison.Ordinal);
        Assert.Contains("days late", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cupper_is_told_of_samples_and_tables_alone()
    {
        await SignedContract.StoreAsync(house, ApprovalRule.Replace);
        await ArrivedLot.FillAsync(house);
        var lot = await house.FromLedgerAsync(db => db.Lots.OrderBy(one => one.Ref).Select(one => one.Ref).FirstAsync(Stop));
        using var asked = new StringContent($$"""{ "lots": ["{{lot}}"], "weightGrams": 300, "askedOn": "2026-09-01" }""", null, "application/json");
        (await (await house.ScriptAsync(Role.Buyer)).PostAsync(new Uri("/api/samples/requests", UriKind.Relative), asked, Stop)).EnsureSuccessStatusCode();

        var kinds = (await LinesAsync(Role.Cupper)).Select(line => line.GetProperty("kind").GetString()).Distinct();
        var page = await (await house.BrowserAsync(Role.Cupper)).ReadAsync("/Due");

        Assert.NotEmpty(kinds);
        Assert.All(kinds, kind => Assert.Contains(kind, new[] { "sample", "session" }));
        Assert.DoesNotContain("Casa Mirador", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_calendar_reads_the_private_address_with_its_owners_roles_until_it_is_revoked()
    {
        var contract = await SignedContract.StoreAsync(house, ApprovalRule.Replace);
        var buyer = await MakeAsync(Role.Buyer);
        var cupper = await MakeAsync(Role.Cupper);
        var visitor = house.Visitor().Client;

        var seen = await visitor.GetAsync(buyer, Stop);
        var hidden = await (await visitor.GetAsync(cupper, Stop)).Content.ReadAsStringAsync(Stop);
        await (await house.BrowserAsync(Role.Buyer)).SendFormAsync("/Myself/Calendar", new Dictionary<string, string>(), "Revoke");
        var revoked = await visitor.GetAsync(buyer, Stop);

        var text = (await seen.Content.ReadAsStringAsync(Stop)).Replace("\r\n ", "", StringComparison.Ordinal);
        Assert.Equal("text/calendar", seen.Content.Headers.ContentType!.MediaType);
        Assert.Contains($"UID:approval-{contract.Id.Value:n}@greenledger", text, StringComparison.Ordinal);
        Assert.Contains("DTSTART;VALUE=DATE:20260930", text, StringComparison.Ordinal);
        Assert.StartsWith("BEGIN:VCALENDAR", hidden, StringComparison.Ordinal);
        Assert.DoesNotContain("approval-", hidden, StringComparison.Ordinal);
        Assert.DoesNotContain("Casa Mirador", hidden, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, revoked.StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.GetAsync(new Uri("/calendar/guessed.ics", UriKind.Relative), Stop)).StatusCode);
    }

    [Fact]
    public async Task The_address_is_shown_once_and_kept_as_a_fingerprint_and_a_new_one_ends_the_old()
    {
        var first = await MakeAsync(Role.LeadCupper);
        var second = await MakeAsync(Role.LeadCupper);
        var visitor = house.Visitor().Client;

        Assert.Equal(HttpStatusCode.NotFound, (await visitor.GetAsync(first, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await visitor.GetAsync(second, Stop)).StatusCode);
        Assert.Null((await (await house.BrowserAsync(Role.LeadCupper)).ReadAsync("/Myself/Calendar")).QuerySelector("#fresh-address"));
        var hashes = await house.FromLedgerAsync(db => db.CalendarFeeds.Select(feed => feed.Hash).ToListAsync(Stop));
        Assert.NotEmpty(hashes);
        Assert.All(hashes, hash => Assert.DoesNotContain(hash, second.OriginalString, StringComparison.Ordinal));
        Assert.All(hashes, hash => Assert.Equal(64, hash.Length));
    }

    [Fact]
    public async Task How_soon_is_the_buyers_to_say()
    {
        var buyer = await house.BrowserAsync(Role.Buyer);

        var wrong = await buyer.SendFormAsync("/Due/Habits", new Dictionary<string, string> { ["Input.ReceiptDays"] = "900" });
        var saved = await buyer.SendFormAsync("/Due/Habits", new Dictionary<string, string> { ["Input.NoticeDays"] = "10" });

        Assert.Contains("between 0 and 365", (await TestBrowser.PageAsync(wrong)).QuerySelector("#Input_ReceiptDays_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        Assert.Equal(10, await house.FromLedgerAsync(db => db.DueHabits.Select(habits => habits.NoticeDays).SingleAsync(Stop)));
    }

    private async Task<List<JsonElement>> LinesAsync(Role role) =>
        [.. (await (await house.ScriptAsync(role)).GetFromJsonAsync<JsonElement>(Address, Stop)).EnumerateArray()];

    private static bool Is(JsonElement line, string kind, Guid record) =>
        line.GetProperty("kind").GetString() == kind && line.GetProperty("recordId").GetGuid() == record;

    private async Task<Uri> MakeAsync(Role role)
    {
        var browser = await house.BrowserAsync(role);
        await browser.SendFormAsync("/Myself/Calendar", new Dictionary<string, string>(), "Make");
        var shown = (await browser.ReadAsync("/Myself/Calendar")).QuerySelector("#fresh-address")!.TextContent;
        return new Uri(new Uri(shown).PathAndQuery, UriKind.Relative);
    }
}
