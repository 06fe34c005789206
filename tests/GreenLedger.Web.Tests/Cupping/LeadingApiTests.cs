using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>Laying out and leading a table by script, as the pages do it.</summary>
public sealed class LeadingApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static readonly string[] Panel = ["A Cupper", "A Buyer"];
    private static readonly string[] Leading = ["A LeadCupper"];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_table_is_laid_out_with_panel_duplicates_reference_and_flights()
    {
        var table = await Table.LayOutAsync(house);
        var other = await Table.LayOutAsync(house);
        var leader = await house.ScriptAsync(Role.LeadCupper);

        var id = await LayOutAsync(leader, new
        {
            title = "By script",
            samples = table.Labels.Append(other.Labels[0]),
            reference = other.Labels[1],
            duplicates = 1,
            mostInFlight = 3,
            cupsPerSample = 4,
            cupMilliliters = 200,
            cuppers = Panel,
            pourers = Leading,
        });
        var plan = await leader.GetFromJsonAsync<JsonElement>($"/api/cupping/sessions/{id}/plan", Stop);

        // 3 coffees and 1 duplicate are 4 codes; the reference makes 5, which is two flights of at most 3, so that it stands in each: 6 codes.
        Assert.Equal([3, 3], plan.GetProperty("flights").EnumerateArray().Select(flight => flight.GetProperty("codes").GetArrayLength()));
        Assert.Equal(["A Cupper", "A Buyer"], plan.GetProperty("cuppers").EnumerateArray().Select(cupper => cupper.GetProperty("cupper").GetString()));
        Assert.Equal("A LeadCupper", plan.GetProperty("pourers")[0].GetString());
        // 55 g a litre (handbook quality.md section 1.1) in 200 mL.
        Assert.Equal((200, 11m), (plan.GetProperty("cupMilliliters").GetInt32(), plan.GetProperty("doseGrams").GetDecimal()));
        var session = await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(one => one.Id == id, Stop));
        Assert.Equal((1, 2, 4), (session.Samples.Count(sample => sample.IsDuplicate && !sample.IsReference), session.Samples.Count(sample => sample.IsReference), session.CupsPerSample));
    }

    [Fact]
    public async Task What_is_left_out_is_as_on_the_page_and_codes_of_the_last_sessions_are_not_used_again()
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.ScriptAsync(Role.LeadCupper);
        var before = await house.FromLedgerAsync(db => db.CuppingSessions.SelectMany(session => session.Samples).Select(sample => sample.Code).ToListAsync(Stop));

        var id = await LayOutAsync(leader, new { title = "As on the page", samples = table.Labels });

        // Two samples: one hidden duplicate for each five begun, our own choice.
        var codes = await house.FromLedgerAsync(db => db.CuppingSessions.Where(session => session.Id == id).SelectMany(session => session.Samples).Select(sample => sample.Code).ToListAsync(Stop));
        Assert.Equal(3, codes.Count);
        Assert.Empty(codes.Intersect(before));
    }

    [Fact]
    public async Task What_a_table_would_give_is_told_and_not_stored()
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.ScriptAsync(Role.LeadCupper);
        var before = await house.FromLedgerAsync(db => db.CuppingSessions.CountAsync(Stop));

        var answer = await leader.PostAsJsonAsync("/api/cupping/sessions/propose", new { title = "Only asked", samples = table.Labels, duplicates = 0 }, Stop);

        var proposal = await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
        Assert.Equal((2, 1), (proposal.GetProperty("codes").GetInt32(), proposal.GetProperty("flights").GetInt32()));
        Assert.Contains(proposal.GetProperty("estimables").EnumerateArray(), one => one.GetProperty("question").GetString() == "repeatability" && !one.GetProperty("can").GetBoolean());
        Assert.Equal(before, await house.FromLedgerAsync(db => db.CuppingSessions.CountAsync(Stop)));
    }

    [Theory]
    [InlineData("""{ "title": "x", "samples": ["NOSUCH"] }""", "samples", "No sample here has the label code NOSUCH")]
    [InlineData("""{ "title": "x", "samples": [] }""", "samples", "Choose at least one sample")]
    [InlineData("""{ "title": "x", "samples": ["LABEL"], "cuppers": ["Nobody"] }""", "cuppers", "Nobody here who may cup is called 'Nobody'")]
    [InlineData("""{ "title": "x", "samples": ["LABEL"], "duplicates": 2 }""", "duplicates", "at most 1 can be poured twice")]
    public async Task What_cannot_be_laid_out_is_refused_with_its_field(string body, string field, string sentence)
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.ScriptAsync(Role.LeadCupper);

        var answer = await leader.PostAsync(
            new Uri("/api/cupping/sessions", UriKind.Relative), new StringContent(body.Replace("LABEL", table.Labels[0], StringComparison.Ordinal), null, "application/json"), Stop);

        var text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains(sentence, text, StringComparison.Ordinal);
        Assert.Contains($"\"{field}\"", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task The_key_is_told_to_who_pours_alone_and_each_opening_is_recorded()
    {
        var table = await Table.LayOutAsync(house);
        await house.SeatAsync(table, Role.Cupper);
        var address = new Uri($"/api/cupping/sessions/{table.SessionId}/key", UriKind.Relative);

        foreach (var role in new[] { Role.Cupper, Role.Buyer })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await (await house.ScriptAsync(role)).PostAsync(address, null, Stop)).StatusCode);
        }

        var key = await (await (await house.ScriptAsync(Role.LeadCupper)).PostAsync(address, null, Stop)).Content.ReadFromJsonAsync<JsonElement>(Stop);

        Assert.Equal(table.Labels, key.EnumerateArray().Select(row => row.GetProperty("label").GetString()));
        var opened = await house.FromLedgerAsync(db => db.CuppingSessions.Where(session => session.Id == table.SessionId).SelectMany(session => session.KeyOpenings)
            .Join(db.People, opening => opening.By, person => person.Id, (opening, person) => person.Name).ToListAsync(Stop));
        Assert.Equal(["A LeadCupper"], opened);
    }

    [Fact]
    public async Task A_latecomer_joins_and_is_served_every_code()
    {
        var table = await Table.LayOutAsync(house);
        await house.SeatAsync(table, Role.Cupper);
        var leader = await house.ScriptAsync(Role.LeadCupper);

        var answer = await leader.ActAsync(table.SessionId, "latecomers", new { person = "A Buyer" });
        var again = await leader.ActAsync(table.SessionId, "latecomers", new { person = "A Buyer" });

        var late = (await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("cuppers").EnumerateArray().Single(cupper => cupper.GetProperty("cupper").GetString() == "A Buyer");
        Assert.Equal(table.Codes.Order(), late.GetProperty("served")[0].GetProperty("codes").EnumerateArray().Select(code => code.GetString()!).Order());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.StatusCode);
        Assert.Contains("already on the panel", await again.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_is_where_is_told_to_who_leads_without_a_score()
    {
        var table = await Table.LayOutAsync(house);
        await house.SeatAsync(table, Role.Cupper);
        var address = new Uri($"/api/cupping/sessions/{table.SessionId}/live", UriKind.Relative);

        var live = await (await house.ScriptAsync(Role.LeadCupper)).GetFromJsonAsync<JsonElement>(address, Stop);

        Assert.Equal(table.Codes.Length, live.GetProperty("missing").GetInt32());
        var cupper = Assert.Single(live.GetProperty("cuppers").EnumerateArray().ToList());
        Assert.Equal("A Cupper", cupper.GetProperty("name").GetString());
        Assert.Equal(table.Codes.Order(), cupper.GetProperty("notBegun").EnumerateArray().Select(code => code.GetString()!).Order());
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.Cupper)).GetAsync(address, Stop)).StatusCode);
    }

    private static async Task<Id<CuppingSession>> LayOutAsync(HttpClient leader, object request)
    {
        var answer = await leader.PostAsJsonAsync("/api/cupping/sessions", request, Stop);
        Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync(Stop));
        return Id<CuppingSession>.Parse((await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetString()!, null);
    }
}
