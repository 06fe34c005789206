using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>Cupping alone through the API, as its pages do it.</summary>
public sealed class AloneApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task One_coffee_is_cupped_alone_with_nothing_to_lay_out()
    {
        var table = await Table.LayOutAsync(house);
        var buyer = await house.ScriptAsync(Role.Buyer);

        var started = await buyer.PostAsJsonAsync("/api/cupping/sessions/alone", new { samples = new[] { table.Labels[0].ToLowerInvariant() } }, Stop);

        Assert.Equal(HttpStatusCode.Created, started.StatusCode);
        var reply = await started.Content.ReadFromJsonAsync<JsonElement>(Stop);
        Assert.Equal((3, "100-point"), (reply.GetProperty("cupsPerSample").GetInt32(), reply.GetProperty("form").GetString()));
        var session = await SessionAsync(reply);
        Assert.Equal((Blinding.Open, table.SampleIds[0]), (session.Blinding, session.Samples.Single().SampleId.ToString()));
        await WriteAsync(buyer, session.Id, session.Samples[0].Code, "8");
        Assert.True((await buyer.PostAsync(new Uri($"/api/cupping/sessions/{session.Id}/close", UriKind.Relative), null, Stop)).IsSuccessStatusCode);
    }

    [Fact]
    public async Task What_cannot_be_cupped_alone_is_refused_with_its_field()
    {
        var table = await Table.LayOutAsync(house);
        var (buyer, cupper) = (await house.ScriptAsync(Role.Buyer), await house.ScriptAsync(Role.Cupper));

        await RefusedAsync(buyer, new { }, "Choose what you cup");
        await RefusedAsync(buyer, new { samples = new string?[] { null } }, "No sample here has the label code");
        await RefusedAsync(buyer, new { samples = new[] { "NOSUCH" } }, "No sample here has the label code NOSUCH");
        await RefusedAsync(buyer, new { samples = new[] { table.Labels[0] }, undersides = true }, "at least two samples");
        await RefusedAsync(cupper, new { samples = new[] { table.Labels[0] } }, "stands on a table where you cup");
    }

    [Fact]
    public async Task The_codes_under_the_bowls_are_given_once_every_sheet_is_in()
    {
        var table = await Table.LayOutAsync(house);
        var buyer = await house.ScriptAsync(Role.Buyer);
        var started = await buyer.PostAsJsonAsync("/api/cupping/sessions/alone", new { samples = table.Labels.Take(2), cupsPerSample = 3, undersides = true }, Stop);
        var session = await SessionAsync(await started.Content.ReadFromJsonAsync<JsonElement>(Stop));
        var address = $"/api/cupping/sessions/{session.Id}/undersides";
        var (first, second) = (session.Samples[0].Code, session.Samples[1].Code);
        var codes = new Dictionary<string, string> { ["P1"] = second, ["P2"] = first };

        var written = await buyer.GetFromJsonAsync<List<JsonElement>>(address, Stop);
        var others = await (await house.ScriptAsync(Role.LeadCupper)).GetAsync(new Uri(address, UriKind.Relative), Stop);
        await WriteAsync(buyer, session.Id, "P1", "8");
        var early = await buyer.PostAsJsonAsync(address, new { codes }, Stop);
        await WriteAsync(buyer, session.Id, "P2", "7");
        var hidden = await buyer.GetAsync(new Uri(address, UriKind.Relative), Stop);
        var none = await buyer.PostAsJsonAsync(address, new { }, Stop);
        var wrong = await buyer.PostAsJsonAsync(address, new { codes = new Dictionary<string, string> { ["P1"] = first, ["P2"] = first } }, Stop);
        var turned = await buyer.PostAsJsonAsync(address, new { codes }, Stop);

        Assert.Equal([.. session.Samples.Select(sample => sample.Code)], written!.Select(row => row.GetProperty("code").GetString()));
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.NotFound), (others.StatusCode, hidden.StatusCode));
        Assert.All([early, none, wrong], answer => Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode));
        Assert.Equal(HttpStatusCode.OK, turned.StatusCode);
        var after = await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(one => one.Id == session.Id, Stop));
        var cupper = after.Panel.Single().PersonId;
        // 100-point form, 7 × 8 + 30 and 7 × 7 + 30: under P1 stood the second code.
        Assert.Equal((Score.Of(86m), Score.Of(79m)), (after.SheetOf(after.Poured(second), cupper)!.Total, after.SheetOf(after.Poured(first), cupper)!.Total));
    }

    private async Task<CuppingSession> SessionAsync(JsonElement reply)
    {
        var id = new Id<CuppingSession>(reply.GetProperty("id").GetGuid());
        return await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(session => session.Id == id, Stop));
    }

    private static async Task RefusedAsync(HttpClient script, object request, string sentence)
    {
        var answer = await script.PostAsJsonAsync("/api/cupping/sessions/alone", request, Stop);
        var problem = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(sentence, problem, StringComparison.Ordinal);
        Assert.Contains("Samples", problem, StringComparison.OrdinalIgnoreCase);
    }

    private static async Task WriteAsync(HttpClient phone, Id<CuppingSession> session, string code, string mark)
    {
        await phone.ActAsync(session, $"sheets/{code}/changes", new { key = Guid.NewGuid(), version = 0, values = Seats.All(mark) });
        var handedIn = await phone.ActAsync(session, $"sheets/{code}/hand-in");
        Assert.True(handedIn.IsSuccessStatusCode, await handedIn.Content.ReadAsStringAsync(Stop));
    }
}
