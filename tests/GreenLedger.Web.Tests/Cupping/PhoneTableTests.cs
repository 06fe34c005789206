using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>What a phone at the table sends, from the first change to the closed session.</summary>
public sealed class PhoneTableTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_change_counts_once_and_two_devices_are_shown_both()
    {
        var table = await Table.LayOutAsync(house);
        var phone = await house.ScriptAsync(Role.Cupper);
        var key = Guid.NewGuid();
        var flavor = new Dictionary<string, string> { ["mark.flavor"] = "7.75" };

        var first = await JsonAsync(await phone.ChangeAsync(table, 0, 0, flavor, key));
        var again = await JsonAsync(await phone.ChangeAsync(table, 0, 0, flavor, key));
        var clash = await phone.ChangeAsync(table, 0, 0, new() { ["mark.flavor"] = "8.50" });
        var wrong = await phone.ChangeAsync(table, 0, 1, new() { ["mark.flavor"] = "7.80" });

        Assert.Equal((1, 1), (first.GetProperty("version").GetInt32(), again.GetProperty("version").GetInt32()));
        Assert.Equal(HttpStatusCode.Conflict, clash.StatusCode);
        var both = await clash.Content.ReadFromJsonAsync<JsonElement>(Stop);
        Assert.Equal("8.50", both.GetProperty("yours").GetProperty("values").GetProperty("mark.flavor").GetString());
        Assert.Equal("7.75", both.GetProperty("stored").GetProperty("values").GetProperty("mark.flavor").GetString());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        Assert.Contains("steps of 0.25", await wrong.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_change_without_values_is_refused_by_itself()
    {
        var table = await Table.LayOutAsync(house);
        var phone = await house.ScriptAsync(Role.Cupper);
        var address = new Uri($"/api/cupping/sessions/{table.SessionId}/sheets/{table.Codes[0]}/changes", UriKind.Relative);

        var none = await phone.PostAsJsonAsync(address, new { key = Guid.NewGuid(), version = 0, values = (object?)null }, Stop);
        var empty = await phone.PostAsJsonAsync(address, new { key = Guid.NewGuid(), version = 0, values = new Dictionary<string, string?> { ["note"] = null } }, Stop);

        Assert.All([none, empty], answer => Assert.InRange((int)answer.StatusCode, 400, 422));
    }

    [Fact]
    public async Task A_sheet_handed_in_is_closed_until_a_reason_opens_it_and_keeps_the_first()
    {
        var table = await Table.LayOutAsync(house);
        var phone = await house.ScriptAsync(Role.Cupper);
        var sheet = $"sheets/{table.Codes[0]}";
        var early = await phone.ActAsync(table.SessionId, sheet + "/hand-in");
        await phone.ChangeAsync(table, 0, 0, new() { ["mark.flavor"] = "8" });
        var unfinished = await phone.ActAsync(table.SessionId, sheet + "/hand-in");
        await phone.ChangeAsync(table, 0, 1, Seats.All("8"));
        await phone.ChangeAsync(table, 0, 2, new() { ["bad.fault"] = "01000", ["cups.clean-cup"] = "10111", ["defect"] = "phenolic", ["words"] = "plum, cedar wood shavings" });

        var handedIn = await JsonAsync(await phone.ActAsync(table.SessionId, sheet + "/hand-in"));
        var twice = await JsonAsync(await phone.ActAsync(table.SessionId, sheet + "/hand-in"));
        var closed = await phone.ChangeAsync(table, 0, 4, new() { ["mark.flavor"] = "9" });
        var silent = await phone.ActAsync(table.SessionId, sheet + "/reopen", new { reason = "" });
        var open = await JsonAsync(await phone.ActAsync(table.SessionId, sheet + "/reopen", new { reason = "Took the wrong cup" }));
        await phone.ChangeAsync(table, 0, open.GetProperty("version").GetInt32(), new() { ["mark.flavor"] = "9" });
        var anew = await JsonAsync(await phone.ActAsync(table.SessionId, sheet + "/hand-in"));

        Assert.Equal([HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity], [early.StatusCode, unfinished.StatusCode]);
        Assert.Contains("Still without a mark: Fragrance/aroma", await unfinished.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        // Worked by hand: 7 × 8.00 + 10 + 8 + 10 − 4 = 80.00; a point more for flavor.
        Assert.Equal((80m, 80m, 81m), (Total(handedIn), Total(twice), Total(anew)));
        Assert.Equal([HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity], [closed.StatusCode, silent.StatusCode]);
        var stored = (await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(session => session.Id == table.SessionId, Stop))).Sheets.Single();
        Assert.Equal((Score.Of(80m), "Took the wrong cup"), (stored.EarlierSheets.Single().Total, stored.EarlierSheets.Single().Reason));
        Assert.Equal(["11111", "10111", "11111", "00000", "01000"], stored.Cups);
        Assert.Equal(stored.Cups, stored.EarlierSheets.Single().Cups);
        Assert.Equal("phenolic", stored.EarlierSheets.Single().DefectName);
        Assert.Equal("phenolic", stored.DefectName);
        Assert.True(await house.FromLedgerAsync(db => db.Descriptors.AnyAsync(word => word.Word == "cedar wood shavings" && word.Family == Descriptor.Unsorted, Stop)));
    }

    [Fact]
    public async Task Only_the_panel_writes_and_each_has_an_own_order()
    {
        var table = await Table.LayOutAsync(house);
        await house.SeatAsync(table, Role.LeadCupper, Role.Cupper);
        var cupper = await house.ScriptAsync(Role.Cupper);
        var lead = await house.ScriptAsync(Role.LeadCupper);
        var stranger = await house.ScriptAsync(Role.Buyer);

        var refused = await stranger.ChangeAsync(table, 0, 0, new() { ["mark.flavor"] = "8" });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("latecomer", await refused.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(table.Codes, await OrderAsync(lead, table));
        Assert.Equal(table.Codes.Reverse(), await OrderAsync(cupper, table));
        var page = await (await house.BrowserAsync(Role.Buyer)).ReadAsync($"/Cupping/Cup/{table.SessionId}");
        Assert.Contains("add you as a latecomer", page.Body!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_clock_is_kept_by_the_server_and_started_by_whoever_leads()
    {
        var table = await Table.LayOutAsync(house);
        var cupper = await house.ScriptAsync(Role.Cupper);
        var lead = await house.ScriptAsync(Role.LeadCupper);

        var refused = await cupper.ActAsync(table.SessionId, "flights/1/pour");
        var early = await lead.ActAsync(table.SessionId, "flights/1/extend", new { minutes = 5 });
        await lead.ActAsync(table.SessionId, "flights/1/pour");
        await lead.ActAsync(table.SessionId, "flights/1/extend", new { minutes = 5 });
        var clock = await cupper.GetFromJsonAsync<JsonElement>($"/api/cupping/sessions/{table.SessionId}/clock", Stop);

        Assert.Equal([HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity], [refused.StatusCode, early.StatusCode]);
        var flight = clock.GetProperty("flights").EnumerateArray().Single();
        Assert.Equal(5, flight.GetProperty("extendedMinutes").GetInt32());
        Assert.InRange(clock.GetProperty("now").GetDateTimeOffset() - flight.GetProperty("pouredAt").GetDateTimeOffset(), TimeSpan.Zero, TimeSpan.FromMinutes(2));
    }

    [Fact]
    public async Task Closing_names_the_missing_sheets_first_and_the_live_page_shows_no_score()
    {
        var table = await Table.LayOutAsync(house);
        await house.SeatAsync(table, Role.Cupper, Role.LeadCupper);
        var phone = await house.ScriptAsync(Role.Cupper);
        var lead = await house.BrowserAsync(Role.LeadCupper);
        await phone.ChangeAsync(table, 0, 0, Seats.All("7.25"));
        await phone.ActAsync(table.SessionId, $"sheets/{table.Codes[0]}/hand-in");
        await phone.ChangeAsync(table, 1, 0, new() { ["mark.flavor"] = "9.25" });

        var live = (await lead.ReadAsync($"/Cupping/Live/{table.SessionId}")).QuerySelector("main")!.TextContent;
        var asks = await lead.ReadAsync($"/Cupping/Close/{table.SessionId}");
        var refused = await TestBrowser.PageAsync(await lead.PostAsync($"/Cupping/Close/{table.SessionId}"));
        var byScript = await (await house.ScriptAsync(Role.LeadCupper)).PostAsync(new Uri($"/api/cupping/sessions/{table.SessionId}/close", UriKind.Relative), null, Stop);
        var closed = await lead.SendFormAsync($"/Cupping/Close/{table.SessionId}", new Dictionary<string, string> { ["WithMissing"] = "true" });

        Assert.Contains("1 of 2", live, StringComparison.Ordinal);
        // 7 × 7.25 + 30.
        Assert.DoesNotContain("80.75", live, StringComparison.Ordinal);
        Assert.DoesNotContain("9.25", live, StringComparison.Ordinal);
        Assert.Contains($"A Cupper: {table.Codes[1]} (begun)", asks.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("3 sheets are missing", refused.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, byScript.StatusCode);
        Assert.Equal($"/Cupping/Result/{table.SessionId}", closed.Headers.Location?.OriginalString);
    }

    [Fact]
    public async Task A_latecomer_is_added_with_an_own_order()
    {
        var table = await Table.LayOutAsync(house);
        await house.SeatAsync(table, Role.Cupper);
        var lead = await house.BrowserAsync(Role.LeadCupper);
        var person = await house.FromLedgerAsync(db => Seats.PersonAsync(db, Role.Buyer));

        var answer = await lead.SendFormAsync($"/Cupping/Live/{table.SessionId}", new Dictionary<string, string> { ["person"] = person.Id.ToString() }, "Add");

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var session = await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(one => one.Id == table.SessionId, Stop));
        Assert.NotNull(session.MemberOf(person.Id)!.JoinedAt);
        Assert.Equal([1, 2], session.MemberOf(person.Id)!.ServingOrder.Order());
        var code = await lead.Client.GetAsync(new Uri($"/Cupping/Live/{table.SessionId}?handler=Code", UriKind.Relative), Stop);
        Assert.Equal("image/svg+xml", code.Content.Headers.ContentType?.MediaType);
    }

    private static decimal Total(JsonElement sheet) => sheet.GetProperty("total").GetDecimal();

    private static async Task<IEnumerable<string?>> OrderAsync(HttpClient phone, Table table)
    {
        var own = await phone.GetFromJsonAsync<JsonElement>($"/api/cupping/sessions/{table.SessionId}/table", Stop);
        return [.. own.GetProperty("codes").EnumerateArray().Select(code => code.GetProperty("code").GetString())];
    }

    private static async Task<JsonElement> JsonAsync(HttpResponseMessage answer)
    {
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }
}
