using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>Forms, words, habits and the protocol through the API, as their pages change them.</summary>
public sealed class CuppingHouseApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_form_is_revised_and_only_its_newest_revision()
    {
        var script = await house.ScriptAsync(Role.LeadCupper);
        var form = (await ReadAsync(script, "forms")).EnumerateArray().Single(one => one.GetProperty("id").GetGuid() == CuppingForm.AffectiveId.Value);
        var body = new { rules = form.GetProperty("rules"), reason = "held against the printed standard" };

        var made = await script.PostAsJsonAsync($"/api/cupping/forms/{CuppingForm.AffectiveId}/revisions", body, Stop);
        var late = await script.PostAsJsonAsync($"/api/cupping/forms/{CuppingForm.AffectiveId}/revisions", body, Stop);
        var bare = await script.PostAsJsonAsync($"/api/cupping/forms/{CuppingForm.HundredPointId}/revisions", new { reason = "nothing" }, Stop);

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (made.StatusCode, late.StatusCode, bare.StatusCode));
        var revised = await made.Content.ReadFromJsonAsync<JsonElement>(Stop);
        Assert.Equal((2, 0.65625m, 8), (revised.GetProperty("revision").GetInt32(), revised.GetProperty("rules").GetProperty("slope").GetDecimal(), revised.GetProperty("rules").GetProperty("attributes").GetArrayLength()));
    }

    [Fact]
    public async Task A_descriptive_form_is_revised()
    {
        var script = await house.ScriptAsync(Role.LeadCupper);
        var form = Assert.Single((await ReadAsync(script, "descriptive-forms")).EnumerateArray(), one => one.GetProperty("revision").GetInt32() == 1);

        var made = await script.PostAsJsonAsync($"/api/cupping/descriptive-forms/{DescriptiveForm.Sca103Id}/revisions", new { rules = form.GetProperty("rules"), reason = "as it was" }, Stop);
        var refused = await script.PostAsJsonAsync($"/api/cupping/descriptive-forms/{DescriptiveForm.Sca103Id}/revisions", new { rules = form.GetProperty("rules"), reason = "late" }, Stop);

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.UnprocessableEntity), (made.StatusCode, refused.StatusCode));
        Assert.Equal(2, (await made.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("revision").GetInt32());
    }

    [Fact]
    public async Task A_word_is_added_sorted_retired_and_its_family_renamed()
    {
        var script = await house.ScriptAsync(Role.LeadCupper);

        var added = await script.PostAsJsonAsync("/api/cupping/descriptors", new { word = "medlar", family = "old orchard" }, Stop);
        var twice = await script.PostAsJsonAsync("/api/cupping/descriptors", new { word = "medlar", family = "hedge" }, Stop);
        var word = await added.Content.ReadFromJsonAsync<JsonElement>(Stop);
        var address = $"/api/cupping/descriptors/{word.GetProperty("id").GetString()}";
        var change = new { word = "medlar", family = "old orchard", isRetired = true, version = word.GetProperty("version").GetInt32() };
        var changed = await script.PutAsJsonAsync(address, change, Stop);
        var late = await script.PutAsJsonAsync(address, change, Stop);
        var renamed = await script.PostAsJsonAsync("/api/cupping/descriptors/families/rename", new { from = "old orchard", to = "walled garden" }, Stop);

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.UnprocessableEntity), (added.StatusCode, twice.StatusCode));
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict, HttpStatusCode.OK), (changed.StatusCode, late.StatusCode, renamed.StatusCode));
        var stored = (await ReadAsync(script, "descriptors")).EnumerateArray().Single(one => one.GetProperty("word").GetString() == "medlar");
        Assert.Equal(("walled garden", true), (stored.GetProperty("family").GetString(), stored.GetProperty("isRetired").GetBoolean()));
    }

    [Fact]
    public async Task Habits_and_the_times_of_the_protocol_are_changed()
    {
        var script = await house.ScriptAsync(Role.Buyer);
        var version = (await ReadAsync(script, "habits")).GetProperty("version").GetInt32();
        var body = new { cupMilliliters = 200, doseGramsPerLiter = 55, water = "filtered", mostInFlight = 6, descriptiveForm = true, statedRepeatability = 1.5, version };

        var changed = await script.PutAsJsonAsync("/api/cupping/habits", body, Stop);
        var late = await script.PutAsJsonAsync("/api/cupping/habits", body, Stop);
        var retimed = await script.PostAsJsonAsync("/api/cupping/protocol/revisions", new { afterSeconds = new Dictionary<string, int> { ["skim"] = 330 }, reason = "larger bowls" }, Stop);
        var early = await script.PostAsJsonAsync("/api/cupping/protocol/revisions", new { afterSeconds = new Dictionary<string, int> { ["skim"] = 100 }, reason = "too early" }, Stop);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict), (changed.StatusCode, late.StatusCode));
        Assert.Equal((200, 6), ((await ReadAsync(script, "habits")).GetProperty("cupMilliliters").GetInt32(), (await ReadAsync(script, "habits")).GetProperty("mostInFlight").GetInt32()));
        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.UnprocessableEntity), (retimed.StatusCode, early.StatusCode));
        var protocol = await ReadAsync(script, "protocol");
        Assert.Equal((2, 330), (protocol.GetProperty("revision").GetInt32(), protocol.GetProperty("steps").EnumerateArray().Single(step => step.GetProperty("key").GetString() == "skim").GetProperty("afterSeconds").GetInt32()));
    }

    [Theory]
    [InlineData("forms/01000000-2004-7000-8000-000000000100/revisions")]
    [InlineData("descriptive-forms/01000000-2024-7000-8000-000000000103/revisions")]
    [InlineData("descriptors")]
    [InlineData("descriptors/families/rename")]
    [InlineData("protocol/revisions")]
    public async Task Cuppers_change_none_of_it(string what)
    {
        var cupper = await house.ScriptAsync(Role.Cupper);

        Assert.Equal(HttpStatusCode.Forbidden, (await cupper.PostAsJsonAsync("/api/cupping/" + what, new { reason = "mine" }, Stop)).StatusCode);
    }

    private static Task<JsonElement> ReadAsync(HttpClient script, string what) => script.GetFromJsonAsync<JsonElement>("/api/cupping/" + what, Stop)!;
}
