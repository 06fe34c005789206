using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Grading;

/// <summary>A house adds defect tables of its own, and no line of a table is lost unsaid.</summary>
public sealed class OwnSchemeTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_table_made_from_another_counts_the_next_grade_that_names_it()
    {
        await house.OpenHouseAsync();
        await house.InLedgerAsync(db =>
        {
            var lot = new Lot("OWN-1", "Quinta Nova");
            db.AddRange(lot, new Sample(lot.Id, SampleKind.Offer, "OWN1", new DateOnly(2026, 11, 20), Weight.FromGrams(350m)));
            return db.SaveChangesAsync(Stop);
        });
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var broken = DefectScheme.WashedArabica.Kinds.ToList().FindIndex(kind => kind.Code == "broken");
        var last = DefectScheme.WashedArabica.Kinds.Count;
        const string from = "/Grading/NewScheme?from=washed-arabica-2018";
        var fields = new Dictionary<string, string>
        {
            ["Input.Name"] = "Our own count",
            [$"Input.Kinds[{broken}].BeansPerFullDefect"] = "10",
            [$"Input.Kinds[{last}].Name"] = "Stinker v. 2",
            [$"Input.Kinds[{last}].Category"] = "1",
            [$"Input.Kinds[{last}].BeansPerFullDefect"] = "1",
        };

        var refused = await TestBrowser.PageAsync(await leader.SendFormAsync(from, fields));
        var added = await leader.SendFormAsync(from, new Dictionary<string, string>(fields) { ["Input.Reason"] = "our customers ask for it" });
        var twice = await TestBrowser.PageAsync(await leader.SendFormAsync(from, new Dictionary<string, string>(fields) { ["Input.Reason"] = "again" }));

        Assert.Contains("The reason for a table of your own", refused.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Our own count", refused.QuerySelector("[name='Input.Name']")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Redirect, added.StatusCode);
        Assert.Contains("called 'Our own count' already", twice.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        var shown = (await leader.ReadAsync(added.Headers.Location!.ToString())).QuerySelector("main")!.TextContent;
        Assert.Contains("our customers ask for it", shown, StringComparison.Ordinal);
        Assert.Contains("Stinker v. 2", shown, StringComparison.Ordinal);
        Assert.Contains((await leader.ReadAsync("/Grading/New")).QuerySelectorAll("option"), option => option.GetAttribute("value") == "our-own-count");
        await leader.SendFormAsync("/Grading/New?scheme=our-own-count", new Dictionary<string, string> { ["Input.Label"] = "OWN1", ["Input.Scheme"] = "our-own-count", ["Input.Beans[broken]"] = "30", ["Input.Quakers"] = "0" });
        var grade = await house.FromLedgerAsync(db => db.GreenGrades.AsNoTracking().Join(db.Samples.Where(sample => sample.LabelCode == "OWN1"), one => one.SampleId, sample => sample.Id, (one, _) => one).SingleAsync(Stop));
        // Worked by hand: 30 broken beans are 3 full defects at 10 beans each.
        Assert.Equal(("our-own-count", FullDefects.Of(3m)), (grade.Scheme, grade.Category2));
        var limits = "/Grading/ReviseLimits/" + await house.FromLedgerAsync(db => db.LimitsRevisions.Where(one => one.Code == "washed-specialty").Select(one => one.Id).SingleAsync(Stop));
        var named = await leader.SendFormAsync(limits, new Dictionary<string, string> { ["Input.CountedBy"] = "our-own-count", ["Input.Reason"] = "we count by our own" });
        Assert.Contains("Our own count", (await leader.ReadAsync(named.Headers.Location!.ToString())).QuerySelector("main dl")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_line_that_lost_its_name_is_asked_about_and_goes_only_when_marked()
    {
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var address = "/Grading/ReviseScheme/" + await house.FromLedgerAsync(db => db.SchemeRevisions.Where(one => one.Code == "fine-robusta").Select(one => one.Id).SingleAsync(Stop));
        var first = DefectScheme.PublishedOf("fine-robusta")!.Kinds[0].Name;

        var refused = await TestBrowser.PageAsync(await leader.SendFormAsync(address, new Dictionary<string, string> { ["Input.Kinds[0].Name"] = "", ["Input.Reason"] = "shorter" }));
        var kept = await house.FromLedgerAsync(db => db.SchemeRevisions.CountAsync(one => one.Code == "fine-robusta", Stop));
        var marked = await leader.SendFormAsync(address, new Dictionary<string, string> { ["Input.Kinds[0].Name"] = "", ["Input.Kinds[0].IsLeftOut"] = "true", ["Input.Reason"] = "shorter" });

        Assert.Contains($"Line 1 has lost the name of its defect ({first})", refused.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(1, kept);
        Assert.Equal(HttpStatusCode.Redirect, marked.StatusCode);
        var newest = await house.FromLedgerAsync(db => db.SchemeRevisions.AsNoTracking().SingleAsync(one => one.Code == "fine-robusta" && one.Revision == 2, Stop));
        Assert.DoesNotContain(newest.Scheme.Kinds, kind => kind.Name == first);
    }

    [Fact]
    public async Task A_script_adds_a_table_from_nothing_and_is_told_what_is_missing()
    {
        var script = await house.ScriptAsync(Role.LeadCupper);
        var kinds = new[] { new { name = "Floater", category = 2, beansPerFullDefect = 5m } };
        var classes = new object[] { new { name = "ours", total = 4 }, new { name = "theirs" } };

        var added = await script.PostAsJsonAsync("/api/grading/schemes", new { name = "Floaters only", sampleGrams = 300, kinds, classes, reason = "a trial" }, Stop);

        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        var scheme = await added.Content.ReadFromJsonAsync<JsonElement>(Stop);
        Assert.Equal(("floaters-only", 1, "floater"), (scheme.GetProperty("key").GetString(), scheme.GetProperty("revision").GetInt32(), scheme.GetProperty("kinds")[0].GetProperty("code").GetString()));
        await RefusedAsync(script, "schemes", "{}", "Name");
        await RefusedAsync(script, "schemes", """{ "name": "A" }""", "Kinds");
        await RefusedAsync(script, "schemes", """{ "name": "A", "kinds": [null], "classes": [] }""", "Kinds");
        await RefusedAsync(script, "schemes", """{ "name": "A", "kinds": [{ "category": 1, "beansPerFullDefect": 1 }] }""", "Kinds");
        await RefusedAsync(script, "schemes", """{ "name": "A", "kinds": [{ "name": "Black", "category": 1, "beansPerFullDefect": 1 }], "classes": [null] }""", "Classes");
        await RefusedAsync(script, "schemes", """{ "name": "A", "kinds": [{ "name": "Black", "category": 1, "beansPerFullDefect": 1 }], "classes": [{ "name": null }] }""", "Classes");
        await RefusedAsync(script, "schemes", """{ "name": "A", "from": "no-such-table" }""", "From");
        await RefusedAsync(script, $"schemes/{scheme.GetProperty("id").GetString()}/revisions", """{ "kinds": [null], "classes": null }""", "Kinds");
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.Cupper)).PostAsJsonAsync("/api/grading/schemes", new { name = "B" }, Stop)).StatusCode);
    }

    [Theory]
    [InlineData("""{ "rules": {}, "reason": "x" }""", "Attributes")]
    [InlineData("""{ "rules": { "attributes": [null] }, "reason": "x" }""", "Attributes")]
    [InlineData("""{ "rules": { "attributes": [], "deductions": null }, "reason": "x" }""", "Deductions")]
    [InlineData("""{ "rules": { "attributes": [], "deductions": [], "bands": null }, "reason": "x" }""", "Bands")]
    [InlineData("""{ "rules": { "attributes": [], "deductions": [], "bands": [] }, "reason": "x" }""", "CupCounts")]
    public async Task Rules_of_a_form_that_lack_a_part_are_refused_with_that_part(string body, string field) =>
        await RefusedAsync(await house.ScriptAsync(Role.LeadCupper), $"/api/cupping/forms/{CuppingForm.HundredPointId}/revisions", body, field);

    [Theory]
    [InlineData("""{ "rules": {}, "reason": "x" }""", "Intensities")]
    [InlineData("""{ "rules": { "intensities": [], "lists": null }, "reason": "x" }""", "Lists")]
    [InlineData("""{ "rules": { "intensities": [], "lists": [{ "key": "a", "name": "A", "words": null }] }, "reason": "x" }""", "Lists")]
    public async Task Rules_of_a_descriptive_form_that_lack_a_part_are_refused_with_that_part(string body, string field) =>
        await RefusedAsync(await house.ScriptAsync(Role.LeadCupper), $"/api/cupping/descriptive-forms/{DescriptiveForm.Sca103Id}/revisions", body, field);

    private static async Task RefusedAsync(HttpClient script, string address, string body, string field)
    {
        var answer = await script.PostAsync(new Uri(address[0] == '/' ? address : "/api/grading/" + address, UriKind.Relative), new StringContent(body, null, "application/json"), Stop);
        var problem = await answer.Content.ReadAsStringAsync(Stop);

        Assert.True(answer.StatusCode == HttpStatusCode.UnprocessableEntity, $"{body}: {answer.StatusCode} {problem}");
        Assert.Contains(JsonDocument.Parse(problem).RootElement.GetProperty("errors").EnumerateObject(), one => one.Name.Equals(field, StringComparison.OrdinalIgnoreCase));
    }
}
