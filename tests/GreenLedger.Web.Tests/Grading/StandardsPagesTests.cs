using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Grading;

/// <summary>Defect tables and limits are data with a history, edited by whoever leads.</summary>
public sealed class StandardsPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_changed_table_counts_the_next_grade_and_an_earlier_one_keeps_its_own()
    {
        await SampleAsync("BEFORE");
        await SampleAsync("AFTER");
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var fields = new Dictionary<string, string> { ["Input.Label"] = "BEFORE", ["Input.Beans[broken]"] = "30", ["Input.Quakers"] = "0" };
        await leader.SendFormAsync("/Grading/New", fields);
        var address = "/Grading/ReviseScheme/" + await house.FromLedgerAsync(db => db.SchemeRevisions.Where(one => one.Code == "washed-arabica-2018").Select(one => one.Id).SingleAsync(Stop));
        var broken = DefectScheme.WashedArabica.Kinds.ToList().FindIndex(kind => kind.Code == "broken");

        var refused = await TestBrowser.PageAsync(await leader.SendFormAsync(address, new Dictionary<string, string> { [$"Input.Kinds[{broken}].BeansPerFullDefect"] = "6" }));
        var revised = await leader.SendFormAsync(address, new Dictionary<string, string> { [$"Input.Kinds[{broken}].BeansPerFullDefect"] = "6", ["Input.Reason"] = "as the panel counts" });
        var late = await TestBrowser.PageAsync(await leader.SendFormAsync(address, new Dictionary<string, string> { ["Input.Reason"] = "again on the old one" }));
        await leader.SendFormAsync("/Grading/New", new Dictionary<string, string>(fields) { ["Input.Label"] = "AFTER" });

        Assert.Contains("The reason for the change", refused.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("6", refused.QuerySelector($"[name='Input.Kinds[{broken}].BeansPerFullDefect']")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Redirect, revised.StatusCode);
        Assert.Contains("as the panel counts", (await leader.ReadAsync(revised.Headers.Location!.ToString())).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("newer revision (2)", late.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        // Worked by hand: 30 broken beans are 6 full defects at 5, and 5 at 6.
        Assert.Equal(("washed-arabica-2018", FullDefects.Of(6m)), await FoundAsync("BEFORE"));
        Assert.Equal(("washed-arabica-2018.2", FullDefects.Of(5m)), await FoundAsync("AFTER"));
        var shown = (await leader.ReadAsync($"/Grading/Grade/{await GradeAsync("BEFORE")}")).QuerySelector("main")!.TextContent;
        Assert.Contains("Washed arabica, two categories (2018) (poster 2018", shown, StringComparison.Ordinal);
        Assert.Contains("revision 2", (await leader.ReadAsync($"/Grading/Grade/{await GradeAsync("AFTER")}")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Changed_limits_are_held_against_the_next_grade()
    {
        await SampleAsync("MOIST", "Robusta");
        var buyer = await house.BrowserAsync(Role.Buyer);
        var address = "/Grading/ReviseLimits/" + await house.FromLedgerAsync(db => db.LimitsRevisions.Where(one => one.Code == "fine-robusta").Select(one => one.Id).SingleAsync(Stop));

        var answer = await buyer.SendFormAsync(address, new Dictionary<string, string> { ["Input.HighestMoisture"] = "13", ["Input.Reason"] = "our customers take it" });
        var cupper = await house.BrowserAsync(Role.Cupper);
        await cupper.SendFormAsync("/Grading/New", new Dictionary<string, string> { ["Input.Label"] = "MOIST", ["Input.MoisturePercent"] = "12.8" });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var limits = await house.FromLedgerAsync(async db => (await db.GreenGrades.Include(one => one.Limits).Join(db.Samples, grade => grade.SampleId, sample => sample.Id, (grade, sample) => new { grade, sample }).SingleAsync(pair => pair.sample.LabelCode == "MOIST", Stop)).grade.Limits);
        Assert.True(limits.Single(limit => limit is { Limits: "Fine robusta, revision 2", Name: "Moisture" }).Passed);
        Assert.False(limits.Single(limit => limit is { Limits: "Export target, robusta (ICO Resolution 420)", Name: "Moisture" }).Passed);
    }

    [Fact]
    public async Task Cuppers_read_the_tables_and_do_not_change_them()
    {
        var cupper = await house.BrowserAsync(Role.Cupper);

        var page = await cupper.ReadAsync("/Grading/Standards");
        var links = page.QuerySelectorAll("main th a").Select(link => link.GetAttribute("href")!).ToList();
        var robusta = await cupper.ReadAsync(page.QuerySelectorAll("main th a").First(link => link.TextContent == "Fine robusta, two categories").GetAttribute("href")!);
        var change = await cupper.Client.GetAsync(new Uri(links[0].Replace("/Scheme/", "/ReviseScheme/", StringComparison.Ordinal), UriKind.Relative), Stop);

        Assert.Contains("Chalky white", robusta.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Null(robusta.QuerySelector("main a[href*=Revise]"));
        Assert.NotEqual(HttpStatusCode.OK, change.StatusCode);
    }

    [Fact]
    public async Task The_API_reads_and_revises_what_the_pages_do()
    {
        var script = await house.ScriptAsync(Role.LeadCupper);
        var schemes = await script.GetFromJsonAsync<JsonElement>("/api/grading/schemes", Stop);
        var brazil = schemes.EnumerateArray().Single(one => one.GetProperty("key").GetString() == "brazil-2003");
        var kinds = brazil.GetProperty("kinds").EnumerateArray().Select(kind => new
        {
            code = kind.GetProperty("code").GetString(),
            name = kind.GetProperty("name").GetString(),
            category = kind.GetProperty("category").GetInt32(),
            beansPerFullDefect = kind.GetProperty("code").GetString() == "small-husk" ? 2m : kind.GetProperty("beansPerFullDefect").GetDecimal(),
        }).ToList();
        var address = $"/api/grading/schemes/{brazil.GetProperty("id").GetString()}/revisions";
        var export = (await script.GetFromJsonAsync<JsonElement>("/api/grading/limits", Stop)).EnumerateArray().Single(one => one.GetProperty("code").GetString() == "export-arabica").GetProperty("id").GetString();
        var body = new { kinds, classes = brazil.GetProperty("classes"), reason = "two small husks a defect" };

        var made = await script.PostAsJsonAsync(address, body, Stop);
        var again = await script.PostAsJsonAsync(address, body, Stop);
        var limits = await script.PostAsJsonAsync($"/api/grading/limits/{export}/revisions", new { lowestMoisturePercent = 8, highestMoisturePercent = 12.5, exportDefects = 60, countedBy = "brazil-2003", reason = "our own target" }, Stop);
        // Worked by hand: 6 small husks are 3 full defects at 2 a defect, and 2 at 3.
        var graded = await CalculateAsync(script, "brazil-2003.2");
        var before = await CalculateAsync(script, "brazil-2003");

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.UnprocessableEntity, HttpStatusCode.Created), (made.StatusCode, again.StatusCode, limits.StatusCode));
        Assert.Equal((3m, 2m), (graded.GetProperty("exportDefects").GetDecimal(), before.GetProperty("exportDefects").GetDecimal()));
        Assert.Contains(graded.GetProperty("limits").EnumerateArray(), limit => limit.GetProperty("limit").GetString() == "at most 60");
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.Cupper)).PostAsJsonAsync(address, body, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await script.PostAsJsonAsync($"/api/grading/schemes/{Guid.NewGuid()}/revisions", body, Stop)).StatusCode);
    }

    private static async Task<JsonElement> CalculateAsync(HttpClient script, string scheme) => await (await script.PostAsJsonAsync(
        "/api/grading/calculate/grade", new { sampleWeightGrams = 300, scheme, beans = new Dictionary<string, int> { ["small-husk"] = 6 } }, Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop);

    private async Task SampleAsync(string label, string varieties = "Caturra")
    {
        await house.OpenHouseAsync();
        await house.InLedgerAsync(async db =>
        {
            var lot = new Lot(label + "-1", label);
            lot.Grow("BR", null, null, varieties, null, null);
            db.AddRange(lot, new Sample(lot.Id, SampleKind.Offer, label, new DateOnly(2026, 11, 20), Weight.FromGrams(350m)));
            await db.SaveChangesAsync(Stop);
        });
    }

    private async Task<(string?, FullDefects?)> FoundAsync(string label)
    {
        var id = await GradeAsync(label);
        var grade = await house.FromLedgerAsync(db => db.GreenGrades.SingleAsync(one => one.Id == id, Stop));
        return (grade.Scheme, grade.Category2);
    }

    private Task<Domain.Id<GreenGrade>> GradeAsync(string label) => house.FromLedgerAsync(db => db.GreenGrades
        .Join(db.Samples, grade => grade.SampleId, sample => sample.Id, (grade, sample) => new { grade.Id, sample.LabelCode }).Where(one => one.LabelCode == label).Select(one => one.Id).SingleAsync(Stop));
}
