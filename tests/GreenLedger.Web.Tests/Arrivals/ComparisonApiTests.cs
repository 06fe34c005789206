using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;

namespace GreenLedger.Web.Tests.Arrivals;

public sealed class ComparisonApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Two_samples_are_held_against_each_other_let_go_and_held_again()
    {
        var lot = await ArrivedLot.FillAsync(house);
        using var script = await house.ScriptAsync(Role.Buyer);
        var before = await script.GetFromJsonAsync<JsonElement>(Address(lot), Stop);
        var (approved, drawn) = (before.GetProperty("approvedSampleId").GetGuid(), before.GetProperty("arrivalSampleId").GetGuid());

        var none = await SendAsync(script, lot, new { }, HttpStatusCode.OK);
        var again = await SendAsync(script, lot, new { approvedSampleId = approved, arrivalSampleId = drawn, version = none.GetProperty("version").GetInt32() }, HttpStatusCode.OK);

        Assert.Equal(JsonValueKind.Null, none.GetProperty("cup").ValueKind);
        Assert.Equal(-1.75, again.GetProperty("cup").GetProperty("difference").GetDouble(), 9); // worked by hand: 7 marks, each 0.25 lower
        Assert.Equal("short", again.GetProperty("quality").GetString());
        Assert.Equal([drawn, approved], again.GetProperty("samples").EnumerateArray().Select(sample => sample.GetProperty("id").GetGuid()));
    }

    [Fact]
    public async Task What_the_page_refuses_is_refused_with_its_sentence_and_changes_nothing()
    {
        var lot = await ArrivedLot.FillAsync(house);
        var other = await SampleOfAnotherLotAsync();
        using var script = await house.ScriptAsync(Role.Buyer);
        var before = await script.GetFromJsonAsync<JsonElement>(Address(lot), Stop);
        var approved = before.GetProperty("approvedSampleId").GetGuid();

        var itself = await SendAsync(script, lot, new { approvedSampleId = approved, arrivalSampleId = approved }, HttpStatusCode.UnprocessableEntity);
        var foreign = await SendAsync(script, lot, new { approvedSampleId = other, arrivalSampleId = approved }, HttpStatusCode.UnprocessableEntity);
        var unknown = await SendAsync(script, lot, new { approvedSampleId = Guid.NewGuid() }, HttpStatusCode.UnprocessableEntity);
        await SendAsync(script, lot, new { version = before.GetProperty("version").GetInt32() + 1 }, HttpStatusCode.Conflict);
        using var viewer = await house.ScriptAsync(Role.Viewer);
        var reading = await viewer.PostAsJsonAsync(Address(lot), new { }, Stop);

        Assert.Equal("A sample is not held against itself: choose two.", itself.GetProperty("detail").GetString());
        Assert.Equal("The approved sample stands for another lot.", foreign.GetProperty("detail").GetString());
        Assert.Equal("There is no such sample.", unknown.GetProperty("detail").GetString());
        Assert.Equal(HttpStatusCode.Forbidden, reading.StatusCode);
        var after = await script.GetFromJsonAsync<JsonElement>(Address(lot), Stop);
        Assert.Equal(before.GetRawText(), after.GetRawText());
        Assert.Equal(HttpStatusCode.NotFound, (await script.GetAsync(new Uri($"/api/arrivals/{Guid.NewGuid()}/comparison", UriKind.Relative), Stop)).StatusCode);
    }

    private async Task<Guid> SampleOfAnotherLotAsync()
    {
        var supplier = new Supplier("Elsewhere Exports", SupplierKind.Exporter);
        var lot = new Lot("EL-1", "Elsewhere", supplier.Id);
        var sample = new Sample(lot.Id, SampleKind.PreShipment, "ELSE1", new DateOnly(2026, 8, 20), Weight.FromGrams(300m));
        await house.InLedgerAsync(async db =>
        {
            db.AddRange(supplier, lot, sample);
            await db.SaveChangesAsync(Stop);
        });
        return sample.Id.Value;
    }

    private static Uri Address(ArrivedLot lot) => new($"/api/arrivals/{lot.Arrival}/comparison", UriKind.Relative);

    private static async Task<JsonElement> SendAsync(HttpClient script, ArrivedLot lot, object body, HttpStatusCode expected)
    {
        var answer = await script.PostAsJsonAsync(Address(lot), body, Stop);
        var text = await answer.Content.ReadAsStringAsync(Stop);
        Assert.True(answer.StatusCode == expected, $"{(int)answer.StatusCode} {text}");
        return JsonDocument.Parse(text).RootElement;
    }
}
