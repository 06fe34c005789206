using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

public sealed class SheetTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_sheet_handed_in_on_the_page_is_added_up_by_the_server()
    {
        var table = await Table.LayOutAsync(house);
        var cupper = await house.BrowserAsync(Role.Cupper);

        var answer = await cupper.SendFormAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}", Fields("7.75", "7.75", "7.50", "7.75", "7.50", "7.50", "7.75"));

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var sheet = await house.FromLedgerAsync(db => db.ScoreSheets.SingleAsync(sheet => sheet.SessionId == table.SessionId, Stop));
        // Handbook quality.md section 1.1, worked total 1.
        Assert.Equal(Score.Of(83.50m), sheet.Total);
        Assert.Equal(["plum", "cocoa"], sheet.Descriptors);
        var again = await cupper.ReadAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}");
        Assert.Contains("83.50", again.QuerySelector("[data-total]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_mark_off_its_steps_is_said_beside_it_and_nothing_typed_is_lost()
    {
        var table = await Table.LayOutAsync(house);
        var cupper = await house.BrowserAsync(Role.Cupper);

        var answer = await cupper.SendFormAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}", Fields("7.80", "7.75", "7.50", "", "7.50", "7.50", "7.75"));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains("Acidity is missing", page.QuerySelector("#mark-acidity-error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("7.80", page.QuerySelector("#mark-fragrance-aroma")!.GetAttribute("value"));
        Assert.Equal("plum, cocoa", page.QuerySelector("#Input_Descriptors")!.GetAttribute("value"));
        Assert.Equal(0, await house.FromLedgerAsync(db => db.ScoreSheets.CountAsync(sheet => sheet.SessionId == table.SessionId, Stop)));
        var second = await TestBrowser.PageAsync(await cupper.SendFormAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}", Fields("7.80", "7.75", "7.50", "7.50", "7.50", "7.50", "7.75")));
        Assert.Contains("7.75 and 8.00", second.QuerySelector("#mark-fragrance-aroma-error")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_reads_the_total_of_another_cupper_by_posting_a_sheet_under_their_name()
    {
        var table = await Table.LayOutAsync(house);
        var address = $"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}";
        await (await house.BrowserAsync(Role.LeadCupper)).SendFormAsync(address, Fields("7.75", "7.75", "7.50", "7.75", "7.50", "7.50", "7.75"));
        var other = await house.FromLedgerAsync(db => db.People.Where(person => person.Name == "A LeadCupper").Select(person => person.Id).SingleAsync(Stop));
        var fields = Fields("8.00", "7.75", "7.50", "", "7.50", "7.50", "7.75");
        fields["Input.CupperId"] = other.ToString();

        var page = await TestBrowser.PageAsync(await (await house.BrowserAsync(Role.Cupper)).SendFormAsync(address, fields));

        Assert.Contains("Acidity is missing", page.QuerySelector("#mark-acidity-error")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("83.50", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_that_another_device_handed_in_meanwhile_is_shown_beside_what_was_typed()
    {
        var table = await Table.LayOutAsync(house);
        var cupper = await house.BrowserAsync(Role.Cupper);
        var address = $"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}";
        await cupper.SendFormAsync(address, Fields("7.75", "7.75", "7.50", "7.75", "7.50", "7.50", "7.75"));
        var fields = Fields("8.00", "7.75", "7.50", "7.75", "7.50", "7.50", "7.75");
        fields["Input.Reason"] = "A slip of the pen";
        fields["Input.Version"] = "0"; // As the form of the device that opened the sheet before the first was handed in.

        var page = await TestBrowser.PageAsync(await cupper.SendFormAsync(address, fields));

        Assert.Contains("Somebody saved this record while you had it open", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("8.00", page.QuerySelector("#mark-fragrance-aroma")!.GetAttribute("value"));
        Assert.Contains("stored meanwhile: 7.75", page.QuerySelector("#mark-fragrance-aroma")!.ParentElement!.TextContent, StringComparison.Ordinal);
        Assert.Equal("1", page.QuerySelector("#Input_Version")!.GetAttribute("value"));
        fields["Input.Version"] = "1";
        Assert.Equal(HttpStatusCode.Redirect, (await cupper.SendFormAsync(address, fields)).StatusCode);
        // Worked by hand: 83.50 and a quarter more.
        Assert.Equal(Score.Of(83.75m), (await house.FromLedgerAsync(db => db.ScoreSheets.SingleAsync(sheet => sheet.SessionId == table.SessionId, Stop))).Total);
    }

    [Fact]
    public async Task A_sheet_sent_after_the_session_was_closed_is_refused_with_everything_typed_kept()
    {
        var table = await Table.LayOutAsync(house);
        var cupper = await house.BrowserAsync(Role.Cupper);
        var address = $"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}";
        var token = (await cupper.ReadAsync(address)).QuerySelector("form.cup-sheet input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        var leader = await house.ScriptAsync(Role.LeadCupper);
        await SendAsync(leader, table, 0, 8m);
        await leader.PostAsync(new Uri($"/api/cupping/sessions/{table.SessionId}/close", UriKind.Relative), null, Stop);
        var fields = Fields("7.75", "7.75", "7.50", "7.75", "7.50", "7.50", "7.75");
        fields["__RequestVerificationToken"] = token;
        foreach (var attribute in new[] { "uniformity", "clean-cup", "sweetness" })
        {
            fields[$"Input.GoodCups[{attribute}]"] = "5";
        }

        var page = await TestBrowser.PageAsync(await cupper.Client.PostAsync(new Uri(address, UriKind.Relative), new FormUrlEncodedContent(fields), Stop));

        Assert.Contains("This session is closed", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("7.75", page.QuerySelector("#mark-fragrance-aroma")!.GetAttribute("value"));
        Assert.Equal("plum, cocoa", page.QuerySelector("#Input_Descriptors")!.GetAttribute("value"));
        Assert.Equal(1, await house.FromLedgerAsync(db => db.ScoreSheets.CountAsync(sheet => sheet.SessionId == table.SessionId, Stop)));
    }

    [Fact]
    public async Task Whoever_leads_copies_a_paper_sheet_for_another_cupper_and_goes_on_to_the_next_code()
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var cupper = await house.FromLedgerAsync(db => db.People.FirstAsync(person => person.Roles == Role.Cupper, Stop));

        var answer = await leader.SendFormAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}?cupper={cupper.Id}", Fields("7.75", "7.75", "7.50", "7.75", "7.50", "7.50", "7.75"));

        Assert.Equal($"/Cupping/Sheet/{table.SessionId}/{table.Codes[1]}?cupper={cupper.Id}", answer.Headers.Location?.OriginalString);
        var sheet = await house.FromLedgerAsync(db => db.ScoreSheets.SingleAsync(sheet => sheet.SessionId == table.SessionId, Stop));
        Assert.Equal(cupper.Id, sheet.CupperId);
        var again = await leader.ReadAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}?cupper={cupper.Id}");
        Assert.Equal("7.75", again.QuerySelector("#mark-flavor")!.GetAttribute("value"));
    }

    [Theory]
    // Worked by hand: seven marks of 7.50 are 52.50; good cups give 10 × good ÷ cups each (common practice, no source).
    [InlineData(3, 2, 2, 3, 0, 0, "75.83")] // 52.50 + 6.67 + 6.67 + 10
    [InlineData(4, 3, 4, 4, 1, 0, "78.00")] // 52.50 + 7.50 + 10 + 10 − 2
    [InlineData(5, 4, 3, 4, 1, 1, "68.50")] // 52.50 + 8 + 6 + 8 − 2 − 4
    public async Task Fewer_cups_taints_and_faults_are_added_up_when_the_sheet_is_saved(int cups, int even, int clean, int sweet, int taint, int fault, string total)
    {
        var table = await Table.LayOutAsync(house, cups);
        var cupper = await house.BrowserAsync(Role.Cupper);
        var fields = Fields("7.50", "7.50", "7.50", "7.50", "7.50", "7.50", "7.50");
        foreach (var (key, count) in new[] { ("GoodCups[uniformity]", even), ("GoodCups[clean-cup]", clean), ("GoodCups[sweetness]", sweet), ("DeductedCups[taint]", taint), ("DeductedCups[fault]", fault) })
        {
            fields[$"Input.{key}"] = count.ToString(System.Globalization.CultureInfo.InvariantCulture);
        }

        await cupper.SendFormAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}", fields);

        var page = await cupper.ReadAsync($"/Cupping/Table/{table.SessionId}");
        Assert.Contains("your sheet: " + total, page.QuerySelector(".blind-table")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Role.Cupper)]
    [InlineData(Role.Viewer)]
    [InlineData(Role.LeadCupper)]
    [InlineData(Role.Buyer)]
    public async Task An_open_session_says_nothing_of_what_is_in_the_cups(Role role)
    {
        var table = await Table.LayOutAsync(house);
        await house.InLedgerAsync(async db =>
        {
            var session = await db.CuppingSessions.Whole().SingleAsync(session => session.Id == table.SessionId, Stop);
            var cupper = await db.People.FirstAsync(person => person.Roles == Role.Cupper, Stop);
            session.Submit(table.Codes[0], cupper, new([.. Enumerable.Repeat(Mark.Of(8m), 7)], [5, 5, 5], [0, 0]), DateTimeOffset.UtcNow).Remark(["plum"], null, null);
            await db.SaveChangesAsync(Stop);
        });
        var browser = await house.BrowserAsync(role);
        var script = await house.ScriptAsync(role);
        string[] addresses = [$"/Cupping/Table/{table.SessionId}", $"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}", "/Cupping", $"/api/cupping/sessions/{table.SessionId}", "/api/cupping/sessions"];

        foreach (var address in addresses)
        {
            var client = address.StartsWith("/api", StringComparison.Ordinal) ? script : browser.Client;
            var answer = await client.GetAsync(new Uri(address, UriKind.Relative), Stop);
            var text = await answer.Content.ReadAsStringAsync(Stop);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.All(table.Secrets, secret => Assert.DoesNotContain(secret, text, StringComparison.OrdinalIgnoreCase));
        }

        var result = await browser.Client.GetAsync(new Uri($"/Cupping/Result/{table.SessionId}", UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.Redirect, result.StatusCode);
    }

    [Fact]
    public async Task The_key_is_for_whoever_leads_and_its_opening_is_written_down()
    {
        var table = await Table.LayOutAsync(house);
        var cupper = await house.BrowserAsync(Role.Cupper);
        var leader = await house.BrowserAsync(Role.LeadCupper);

        var refused = await cupper.Client.GetAsync(new Uri($"/Cupping/Key/{table.SessionId}", UriKind.Relative), Stop);
        var shut = await (await leader.Client.GetAsync(new Uri($"/Cupping/Key/{table.SessionId}", UriKind.Relative), Stop)).Content.ReadAsStringAsync(Stop);
        var open = await (await leader.SendFormAsync($"/Cupping/Key/{table.SessionId}", new Dictionary<string, string>(), "Open")).Content.ReadAsStringAsync(Stop);

        Assert.NotEqual(HttpStatusCode.OK, refused.StatusCode);
        Assert.All(table.Secrets, secret => Assert.DoesNotContain(secret, shut, StringComparison.OrdinalIgnoreCase));
        Assert.Contains(table.Labels[0], open, StringComparison.Ordinal);
        var session = await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(session => session.Id == table.SessionId, Stop));
        Assert.Single(session.KeyOpenings);
    }

    [Fact]
    public async Task From_sheets_over_the_API_to_a_result_on_the_page()
    {
        var table = await Table.LayOutAsync(house);
        var cupper = await house.ScriptAsync(Role.Cupper);
        var leader = await house.ScriptAsync(Role.LeadCupper);

        foreach (var (client, first, second) in new[] { (cupper, 7.5m, 8m), (leader, 7.75m, 8.25m) })
        {
            await SendAsync(client, table, 0, first);
            await SendAsync(client, table, 1, second);
        }

        var forbidden = await cupper.PostAsync(new Uri($"/api/cupping/sessions/{table.SessionId}/close", UriKind.Relative), null, Stop);
        var closed = await leader.PostAsync(new Uri($"/api/cupping/sessions/{table.SessionId}/close", UriKind.Relative), null, Stop);

        Assert.Equal(HttpStatusCode.Forbidden, forbidden.StatusCode);
        var reply = await closed.Content.ReadFromJsonAsync<JsonElement>(Stop);
        // Worked by hand: 7 × 7.50 + 30 = 82.50 and 7 × 7.75 + 30 = 84.25 average to 83.375.
        Assert.Equal(83.375m, reply.GetProperty("samples").EnumerateArray().Single(sample => sample.GetProperty("code").GetString() == table.Codes[0]).GetProperty("fitted").GetDecimal());
        Assert.Equal("houseSetting", reply.GetProperty("errorFrom").GetString());
        var page = await (await house.BrowserAsync(Role.Buyer)).ReadAsync($"/Cupping/Result/{table.SessionId}");
        Assert.Contains("83.38 ±", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("Too few sheets to estimate the error", page.Body.TextContent, StringComparison.Ordinal);
        var late = await cupper.PostAsJsonAsync($"/api/cupping/sessions/{table.SessionId}/sheets", Sheet(table, 0, 8m), Stop);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, late.StatusCode);
    }

    [Fact]
    public async Task A_session_is_laid_out_on_the_page_for_samples_that_were_chosen()
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var sample = await house.FromLedgerAsync(db => db.Samples.SingleAsync(sample => sample.LabelCode == table.Labels[0], Stop));

        var answer = await leader.SendFormAsync("/Cupping/New", new Dictionary<string, string> { ["Input.Title"] = "Laid out here", ["Input.Samples"] = sample.Id.ToString() });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var session = await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(session => session.Title == "Laid out here", Stop));
        Assert.Equal(sample.Id, Assert.Single(session.Samples).SampleId);
    }

    private static async Task SendAsync(HttpClient client, Table table, int sample, decimal mark)
    {
        var answer = await client.PostAsJsonAsync($"/api/cupping/sessions/{table.SessionId}/sheets", Sheet(table, sample, mark), Stop);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
    }

    private static object Sheet(Table table, int sample, decimal mark) => new
    {
        code = table.Codes[sample],
        marks = new Dictionary<string, decimal>
        {
            ["fragranceAroma"] = mark,
            ["flavor"] = mark,
            ["aftertaste"] = mark,
            ["acidity"] = mark,
            ["body"] = mark,
            ["balance"] = mark,
            ["overall"] = mark,
        },
    };

    private static Dictionary<string, string> Fields(params string[] marks)
    {
        string[] keys = ["fragrance-aroma", "flavor", "aftertaste", "acidity", "body", "balance", "overall"];
        var fields = keys.Zip(marks).ToDictionary(pair => $"Input.Marks[{pair.First}]", pair => pair.Second);
        fields["Input.Descriptors"] = "plum, cocoa";
        return fields;
    }
}
