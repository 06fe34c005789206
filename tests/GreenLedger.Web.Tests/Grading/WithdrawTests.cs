using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using GreenLedger.Web.Tests.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Grading;

/// <summary>A grade, a roast and a discussed score are withdrawn with a reason: never erased, and counted nowhere.</summary>
public sealed class WithdrawTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("Grading", "Grade")]
    [InlineData("Roasting", "Roast")]
    public async Task A_buyer_withdraws_it_with_a_reason_and_it_stays_to_be_read(string room, string what)
    {
        var (sample, grade, roast) = await WrittenAsync();
        var id = what == "Grade" ? $"{grade}" : $"{roast}";
        var buyer = await house.BrowserAsync(Role.Buyer);

        var refused = await TestBrowser.PageAsync(await buyer.SendFormAsync($"/{room}/Withdraw/{id}", new Dictionary<string, string> { ["Input.WithdrawnBecause"] = " " }));
        var answer = await buyer.SendFormAsync($"/{room}/Withdraw/{id}", new Dictionary<string, string> { ["Input.WithdrawnBecause"] = "the bag of another lot" });

        Assert.Contains("Say why it is withdrawn", refused.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var page = await buyer.ReadAsync($"/{room}/{what}/{id}");
        Assert.Contains("Withdrawn by A Buyer", page.QuerySelector(".note-stop")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("the bag of another lot", page.QuerySelector(".note-stop")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain(page.QuerySelectorAll("a"), link => link.TextContent is "Correct" or "Withdraw");
        Assert.Contains("withdrawn", (await buyer.ReadAsync($"/Samples/Sample/{sample}")).QuerySelector($"a[href$='{id}']")!.ParentElement!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await buyer.Client.GetAsync(new Uri($"/{room}/Correct/{id}", UriKind.Relative), Stop)).StatusCode);
    }

    [Theory]
    [InlineData("grading/grades")]
    [InlineData("roasting/roasts")]
    public async Task A_script_withdraws_it_once(string route)
    {
        var (_, grade, roast) = await WrittenAsync();
        var script = await house.ScriptAsync(Role.Cupper);
        var address = new Uri($"/api/{route}/{(route[0] == 'g' ? $"{grade}" : $"{roast}")}/withdraw", UriKind.Relative);

        var noReason = await script.PostAsJsonAsync(address, new { reason = "" }, Stop);
        var withdrawn = await script.PostAsJsonAsync(address, new { reason = "read on the wrong scale" }, Stop);
        var again = await script.PostAsJsonAsync(address, new { reason = "again" }, Stop);

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.OK, HttpStatusCode.UnprocessableEntity), (noReason.StatusCode, withdrawn.StatusCode, again.StatusCode));
        Assert.Contains("read on the wrong scale", await withdrawn.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Contains("already withdrawn", await again.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_discussed_score_is_struck_out_and_the_earlier_one_stands_again()
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var script = await house.ScriptAsync(Role.LeadCupper);
        await leader.SendFormAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}", Table.Marks("8.00"));
        await leader.PostAsync($"/Cupping/Close/{table.SessionId}");
        await script.ActAsync(table.SessionId, "discussed", new { code = table.Codes[0], score = 85m, reason = "first talk" });
        await script.ActAsync(table.SessionId, "discussed", new { code = table.Codes[0], score = 83m, reason = "second talk" });
        var link = (await leader.ReadAsync($"/Cupping/Result/{table.SessionId}")).QuerySelectorAll("a").Last(one => one.TextContent == "Withdraw").GetAttribute("href")!;

        await leader.SendFormAsync(link, new Dictionary<string, string> { ["Input.WithdrawnBecause"] = "the wrong sheet was read out" });

        var page = await leader.ReadAsync($"/Cupping/Result/{table.SessionId}");
        Assert.Equal("83.00", page.QuerySelector("[aria-label='Discussed scores'] s")!.TextContent);
        Assert.Contains("the wrong sheet was read out", page.QuerySelector("[aria-label='Discussed scores']")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("85.00", page.QuerySelector("[aria-label=Results] tbody tr")!.TextContent, StringComparison.Ordinal);
        var result = await script.GetFromJsonAsync<JsonElement>($"/api/cupping/sessions/{table.SessionId}/result", Stop);
        Assert.Equal(["", "the wrong sheet was read out"], result.GetProperty("discussed").EnumerateArray().Select(one => one.GetProperty("withdrawn") is { ValueKind: JsonValueKind.Object } gone ? gone.GetProperty("because").GetString() : ""));
        var forbidden = await (await house.ScriptAsync(Role.Cupper)).PostAsJsonAsync(
            new Uri($"/api/cupping/sessions/{table.SessionId}/discussed/{result.GetProperty("discussed")[0].GetProperty("id").GetString()}/withdraw", UriKind.Relative), new { reason = "x" }, Stop);
        Assert.Equal(HttpStatusCode.Forbidden, forbidden.StatusCode);
    }

    private async Task<(Id<Sample> Sample, Id<GreenGrade> Grade, Id<SampleRoast> Roast)> WrittenAsync()
    {
        var table = await Table.LayOutAsync(house);
        await house.BrowserAsync(Role.Buyer);
        return await house.FromLedgerAsync(async db =>
        {
            // Of the table's coffee another sample, which no session seals.
            var lot = await db.Lots.FirstAsync(lot => lot.Ref == table.Coffees[1], Stop);
            var sample = new Sample(lot.Id, SampleKind.Offer, "W" + table.Labels[0][2..], new DateOnly(2026, 11, 20), Weight.FromGrams(350));
            var grade = new GreenGrade(sample.Id, lot.Id, new DateOnly(2026, 11, 22), null, Weight.FromGrams(350m));
            var roast = new SampleRoast(sample, new DateTimeOffset(2026, 11, 22, 9, 0, 0, TimeSpan.Zero), null, null).Weigh(Weight.FromGrams(100), null);
            db.AddRange(sample, grade, roast);
            await db.SaveChangesAsync(Stop);
            return (sample.Id, grade.Id, roast.Id);
        });
    }
}
