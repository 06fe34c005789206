using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Cupping;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Api;

public sealed class SamplesAndGradesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_script_receives_a_sample_grades_it_and_reads_both_back()
    {
        var buyer = await house.ScriptAsync(Role.Buyer);
        await LotAsync("API-1", "Quinta da Neblina", "Caturra");

        var sample = await PostAsync(buyer, "/api/samples", """{ "lot": "API-1", "weightGrams": 500, "kind": "preShipment", "receivedOn": "2026-11-20" }""");
        var label = sample.GetProperty("labelCode").GetString();
        var grade = await PostAsync(buyer, "/api/grading/grades", $$"""
            { "labelCode": "{{label}}", "moisturePercent": 11.2, "waterActivity": 0.55, "quakers": 0, "exportDefects": 86,
              "beans": { "partial-black": 5, "broken": 14, "shell": 4, "slight-insect": 19 }, "screensPercent": { "16": 96, "0": 4 } }
            """);

        // Handbook quality.md section 9, check value 5: 4 full, none of category 1; value 7: 86 pass.
        Assert.Equal((0m, 4m), (grade.GetProperty("category1").GetDecimal(), grade.GetProperty("category2").GetDecimal()));
        Assert.True(grade.GetProperty("limits").EnumerateArray().Single(limit => limit.GetProperty("name").GetString() == "Defects in 300 g").GetProperty("passed").GetBoolean());
        var read = await buyer.GetFromJsonAsync<JsonElement>($"/api/samples/{label}", Stop);
        Assert.Equal("API-1", read.GetProperty("lotRef").GetString());
        Assert.Equal(500m, read.GetProperty("weightGrams").GetDecimal());
        Assert.NotNull(read.GetProperty("gradedOn").GetString());
        var grades = await buyer.GetFromJsonAsync<JsonElement>($"/api/grading/grades?q={label}", Stop);
        Assert.Equal(11.2m, Assert.Single(grades.EnumerateArray()).GetProperty("moisturePercent").GetDecimal());
        var whole = await buyer.GetFromJsonAsync<JsonElement>($"/api/grading/grades/{grade.GetProperty("id").GetString()}", Stop);
        Assert.Equal(96m, whole.GetProperty("screensPercent").GetProperty("16").GetDecimal());
        Assert.Equal(14, whole.GetProperty("beans").GetProperty("broken").GetInt32());
    }

    [Theory]
    [InlineData("/api/samples", """{ "lot": "no such lot", "weightGrams": 350 }""", "Lot")]
    [InlineData("/api/samples", """{ "lot": "API-2", "weightGrams": 0 }""", "Weight")]
    [InlineData("/api/grading/grades", """{ "labelCode": "NOSUCH" }""", "LabelCode")]
    public async Task What_cannot_be_is_refused_with_its_field(string address, string body, string field)
    {
        var buyer = await house.ScriptAsync(Role.Buyer);
        await LotAsync("API-2", "Quinta da Serra", null);

        var answer = await buyer.PostAsync(new Uri(address, UriKind.Relative), new StringContent(body, null, "application/json"), Stop);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(field, await answer.Content.ReadAsStringAsync(Stop), StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData(Role.Viewer, HttpStatusCode.Forbidden, HttpStatusCode.Forbidden)]
    [InlineData(Role.Cupper, HttpStatusCode.Forbidden, HttpStatusCode.Created)]
    [InlineData(Role.LeadCupper, HttpStatusCode.Created, HttpStatusCode.Created)]
    [InlineData(Role.Administrator, HttpStatusCode.Forbidden, HttpStatusCode.Forbidden)]
    public async Task Each_role_writes_what_the_roles_table_says(Role role, HttpStatusCode receives, HttpStatusCode grades)
    {
        await LotAsync("API-3", "Quinta do Vale", null);
        var label = (await PostAsync(await house.ScriptAsync(Role.Buyer), "/api/samples", """{ "lot": "API-3", "weightGrams": 350 }""")).GetProperty("labelCode").GetString();
        var script = await house.ScriptAsync(role);

        var received = await script.PostAsJsonAsync("/api/samples", new { lot = "API-3", weightGrams = 350 }, Stop);
        var graded = await script.PostAsJsonAsync("/api/grading/grades", new { labelCode = label, moisturePercent = 11.0 }, Stop);

        Assert.Equal((receives, grades), (received.StatusCode, graded.StatusCode));
    }

    [Fact]
    public async Task A_cuppers_script_finds_no_sample_of_an_open_table_and_no_grade_of_it()
    {
        var table = await Table.LayOutAsync(house);
        await PostAsync(await house.ScriptAsync(Role.LeadCupper), "/api/grading/grades", $$"""{ "labelCode": "{{table.Labels[0]}}", "moisturePercent": 11 }""");
        var cupper = await house.ScriptAsync(Role.Cupper);

        var one = await cupper.GetAsync(new Uri($"/api/samples/{table.Labels[0]}", UriKind.Relative), Stop);
        var all = await cupper.GetStringAsync("/api/samples?take=10000", Stop) + await cupper.GetStringAsync("/api/grading/grades?take=10000", Stop);

        Assert.Equal(HttpStatusCode.NotFound, one.StatusCode);
        Assert.All(table.Secrets, secret => Assert.DoesNotContain(secret, all, StringComparison.OrdinalIgnoreCase));
    }

    private async Task LotAsync(string reference, string name, string? varieties)
    {
        await house.OpenHouseAsync();
        await house.InLedgerAsync(async db =>
        {
            if (!await db.Lots.AnyAsync(lot => lot.Ref == reference, Stop))
            {
                db.Add(new Lot(reference, varieties is null ? name : $"{name}, {varieties}"));
                await db.SaveChangesAsync(Stop);
            }
        });
    }

    private static async Task<JsonElement> PostAsync(HttpClient script, string address, string body)
    {
        var answer = await script.PostAsync(new Uri(address, UriKind.Relative), new StringContent(body, null, "application/json"), Stop);
        Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync(Stop));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }
}
