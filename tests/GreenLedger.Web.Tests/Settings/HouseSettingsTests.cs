using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Settings;

/// <summary>The general settings of the house and its bands of quality, for scripts as on their pages.</summary>
public sealed class HouseSettingsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_house_is_read_and_changed_in_the_version_that_was_read()
    {
        using var script = await house.ScriptAsync(Role.Administrator);
        const string Address = "/api/settings/house";
        var read = (await script.GetFromJsonAsync<JsonObject>(Address, Stop))!;

        var changed = await PutAsync(script, Address, With(read, ("name", "Sorrel & Sons"), ("timeZone", "Europe/Amsterdam"), ("currency", "USD")));
        var slow = await PutAsync(script, Address, With(read, ("name", "Somebody else")));
        var fresh = (await script.GetFromJsonAsync<JsonObject>(Address, Stop))!;
        var refused = await PutAsync(script, Address, With(fresh, ("timeZone", "Europe/Nowhere")));

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.Conflict, HttpStatusCode.UnprocessableEntity), (changed.StatusCode, slow.StatusCode, refused.StatusCode));
        Assert.Equal(("Sorrel & Sons", "Europe/Amsterdam", "USD"), (fresh["name"]!.GetValue<string>(), fresh["timeZone"]!.GetValue<string>(), fresh["currency"]!.GetValue<string>()));
        var page = await (await house.BrowserAsync(Role.Administrator)).ReadAsync("/Settings");
        Assert.Equal("Sorrel & Sons", page.QuerySelector("#Input_Name")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.OK, (await PutAsync(script, Address, With(fresh, ("name", read["name"]!.GetValue<string>()), ("timeZone", read["timeZone"]!.GetValue<string>()), ("currency", read["currency"]!.GetValue<string>())))).StatusCode);
    }

    [Fact]
    public async Task A_buyer_reads_the_settings_and_a_viewer_does_not_and_only_an_administrator_changes_them()
    {
        var address = new Uri("/api/settings/house", UriKind.Relative);
        using var buyer = await house.ScriptAsync(Role.Buyer);

        Assert.Equal(HttpStatusCode.OK, (await buyer.GetAsync(address, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await buyer.PutAsJsonAsync(address, new { name = "Mine", currency = "EUR", timeZone = "Etc/UTC" }, Stop)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.Viewer)).GetAsync(address, Stop)).StatusCode);
    }

    [Fact]
    public async Task Bands_are_read_and_changed_in_the_version_that_was_read()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        const string Address = "/api/summaries/bands";
        var usual = (await script.GetFromJsonAsync<JsonObject>(Address, Stop))!;
        object Body(int version, string form, params (string Name, decimal From)[] bands) => new { version, formId = form, bands = bands.Select(band => new { name = band.Name, fromPoints = band.From }) };
        var form = usual["formId"]!.GetValue<string>();

        // Handbook, quality.md section 1: the bands that are printed with the hundred-point form.
        Assert.Equal([90m, 85m, 80m, 0m], usual["bands"]!.AsArray().Select(band => band!["fromPoints"]!.GetValue<decimal>()));
        Assert.Equal(CuppingForm.HundredPointId.ToString(), form);
        var stated = await script.PutAsJsonAsync(Address, Body(usual["version"]!.GetValue<int>(), form, ("top", 87m), ("rest", 0m)), Stop);
        var read = (await script.GetFromJsonAsync<JsonObject>(Address, Stop))!;
        var again = await script.PutAsJsonAsync(Address, Body(read["version"]!.GetValue<int>(), form, ("top", 88m), ("rest", 0m)), Stop);
        var slow = await script.PutAsJsonAsync(Address, Body(read["version"]!.GetValue<int>(), form, ("top", 89m), ("rest", 0m)), Stop);
        var gap = await script.PutAsJsonAsync(Address, Body((await script.GetFromJsonAsync<JsonObject>(Address, Stop))!["version"]!.GetValue<int>(), form, ("top", 88m)), Stop);
        var unknown = await script.PutAsJsonAsync(Address, Body(0, Guid.NewGuid().ToString(), ("rest", 0m)), Stop);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK, HttpStatusCode.Conflict), (stated.StatusCode, again.StatusCode, slow.StatusCode));
        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.UnprocessableEntity), (gap.StatusCode, unknown.StatusCode));
        Assert.Contains("begins at 0 points", await gap.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        var page = await (await house.BrowserAsync(Role.Buyer)).ReadAsync("/Summaries/Bands");
        Assert.Equal("88", page.QuerySelector("[name='Input.Bands[0].FromPoints']")!.GetAttribute("value")!.Split('.')[0]);
    }

    private static JsonObject With(JsonObject read, params (string Field, string Value)[] changes)
    {
        var body = read.DeepClone().AsObject();
        foreach (var (field, value) in changes)
        {
            body[field] = value;
        }

        return body;
    }

    private static Task<HttpResponseMessage> PutAsync(HttpClient script, string address, JsonObject body) => script.PutAsJsonAsync(address, body, Stop);
}
