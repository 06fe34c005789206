using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Api;

/// <summary>Three offers of one supplier, loaded as a list: two of Kenya, one of Peru that is sold.</summary>
public sealed class OfferRowsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    // Worked by hand: 412.5 US cents/lb = 4.125 USD / 0.45359237 kg = 9.0941 USD/kg; 40 bags of 60 kg are 2,400 kg.
    [Fact]
    public async Task An_offer_is_a_flat_row_with_its_unit_in_the_name()
    {
        using var script = await LoadedAsync();

        var page = await ReadAsync(script, "/api/offers?search=R-1&sort=ref");

        var row = page.GetProperty("rows")[0];
        Assert.Equal(("R-1", 2400m, "on offer"), (Text(row, "ref"), row.GetProperty("kg").GetDecimal(), Text(row, "state")));
        Assert.Equal((9.0941m, "USD"), (row.GetProperty("pricePerKg").GetProperty("amount").GetDecimal(), Text(row.GetProperty("pricePerKg"), "currency")));
        Assert.Equal((87.5m, "washed", "KE"), (row.GetProperty("statedScore").GetDecimal(), Text(row, "process"), Text(row, "countryCode")));
    }

    [Theory]
    [InlineData("origin=KE&sort=ref", "R-1,R-2")]
    [InlineData("state=Sold", "R-3")]
    [InlineData("search=alto", "R-3")]
    [InlineData("sort=-quantity", "R-1,R-3,R-2")]
    [InlineData("sort=price", "R-3,R-2,R-1")]
    public async Task Offers_are_filtered_and_sorted(string query, string refs)
    {
        using var script = await LoadedAsync();

        var page = await ReadAsync(script, "/api/offers?" + query);

        Assert.Equal(refs, string.Join(',', page.GetProperty("rows").EnumerateArray().Select(row => Text(row, "ref"))));
    }

    [Fact]
    public async Task Rows_come_page_by_page()
    {
        using var script = await LoadedAsync();

        var page = await ReadAsync(script, "/api/offers?sort=ref&size=2&page=2");

        Assert.Equal((2, 2, 3), (page.GetProperty("page").GetInt32(), page.GetProperty("pages").GetInt32(), page.GetProperty("total").GetInt32()));
        Assert.Equal("R-3", Text(page.GetProperty("rows")[0], "ref"));
    }

    [Fact]
    public async Task One_offer_is_found_by_reference_and_by_id_with_its_prices_and_what_its_landed_cost_lacks()
    {
        using var script = await LoadedAsync();
        var id = await house.FromLedgerAsync(db => db.Offers.Where(offer => offer.Ref == "R-2").Select(offer => offer.Id).SingleAsync(Cancel));

        var byRef = await ReadAsync(script, "/api/offers/R-2");
        var byId = await ReadAsync(script, $"/api/offers/{id}");

        Assert.Equal(id.ToString(), Text(byRef, "id"));
        Assert.Equal("R-2", Text(byId, "ref"));
        Assert.Equal(600m, byId.GetProperty("prices")[0].GetProperty("kg").GetDecimal()); // worked by hand: 10 bags of 60 kg
        Assert.Equal(JsonValueKind.Null, byId.GetProperty("landedCostPerKg").ValueKind);
        Assert.NotEqual(0, byId.GetProperty("landedCostProblems").GetArrayLength());
    }

    [Theory]
    [InlineData("/api/offers/no-such-ref", HttpStatusCode.NotFound, null)]
    [InlineData("/api/trace/ways/lot/019aaaaa-0000-7000-8000-000000000000", HttpStatusCode.NotFound, null)]
    [InlineData("/api/trace/ways/pallet/019aaaaa-0000-7000-8000-000000000000", HttpStatusCode.BadRequest, "from")]
    [InlineData("/api/offers/019aaaaa-0000-7000-8000-000000000000", HttpStatusCode.NotFound, null)]
    [InlineData("/api/offers?supplier=nobody", HttpStatusCode.BadRequest, "supplier")]
    [InlineData("/api/offers?page=none", HttpStatusCode.BadRequest, "page")]
    [InlineData("/api/stock?on=yesterday", HttpStatusCode.BadRequest, "on")]
    public async Task What_is_not_there_or_not_readable_is_said(string address, HttpStatusCode status, string? field)
    {
        using var script = await LoadedAsync();

        var answer = await script.GetAsync(new Uri(address, UriKind.Relative), Cancel);

        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var said = await answer.Content.ReadFromJsonAsync<JsonElement>(Cancel);
        Assert.Equal(field, said.TryGetProperty("errors", out var errors) ? errors.EnumerateObject().Single().Name : null);
    }

    [Fact]
    public async Task Lots_suppliers_lists_producers_and_words_are_rows_too()
    {
        using var script = await LoadedAsync();

        var lot = (await ReadAsync(script, "/api/offers/lots?search=kiamati%20aa")).GetProperty("rows")[0];
        var supplier = (await ReadAsync(script, "/api/offers/suppliers?search=row")).GetProperty("rows")[0];
        var list = (await ReadAsync(script, "/api/offers/lists?search=rows.csv")).GetProperty("rows")[0];
        var producer = (await ReadAsync(script, "/api/origins/producers?search=kiamati")).GetProperty("rows")[0];
        var countries = await ReadAsync(script, "/api/origins/countries");
        var methods = await ReadAsync(script, "/api/origins/process-methods");

        Assert.Equal(("R-1", "Kiamati AA", "Kiamati", 60m, 2400m), (Text(lot, "ref"), Text(lot, "name"), Text(lot, "producer"), lot.GetProperty("bagKg").GetDecimal(), lot.GetProperty("netKg").GetDecimal()));
        Assert.Equal(("Row Traders", 2, 3), (Text(supplier, "name"), supplier.GetProperty("onOffer").GetInt32(), supplier.GetProperty("offers").GetInt32()));
        Assert.Equal(("rows.csv", 3, 0, "A Buyer"), (Text(list, "fileName"), list.GetProperty("accepted").GetInt32(), list.GetProperty("waiting").GetInt32(), Text(list, "by")));
        Assert.Equal(("Kiamati", 2), (Text(producer, "name"), producer.GetProperty("lots").GetInt32()));
        Assert.Contains(countries.EnumerateArray(), country => Text(country, "code") == "KE");
        Assert.Contains(methods.EnumerateArray(), method => Text(method, "name") == "washed");
    }

    [Fact]
    public async Task A_cupper_sees_origins_and_no_offers()
    {
        using var loaded = await LoadedAsync();
        using var script = await house.ScriptAsync(Role.Cupper);

        var offers = await script.GetAsync(new Uri("/api/offers", UriKind.Relative), Cancel);
        var producers = await script.GetAsync(new Uri("/api/origins/producers", UriKind.Relative), Cancel);

        Assert.Equal((HttpStatusCode.Forbidden, HttpStatusCode.OK), (offers.StatusCode, producers.StatusCode));
    }

    private static string? Text(JsonElement row, string name) => row.GetProperty(name).GetString();

    private static async Task<JsonElement> ReadAsync(HttpClient script, string address)
    {
        var answer = await script.GetAsync(new Uri(address, UriKind.Relative), Cancel);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, await answer.Content.ReadAsStringAsync(Cancel));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Cancel);
    }

    private Task<HttpClient> LoadedAsync() => LoadedList.LoadAsync(house);
}
