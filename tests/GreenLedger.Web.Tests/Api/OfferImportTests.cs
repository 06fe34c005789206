using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Api;

public sealed class OfferImportTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string Grades = "OUTTURN\tFACTORY\tGRADE\tBAGS\tNET KG\tUSD/50KG\tCUP\tMOISTURE %\n"
        + "26AB0007\tKiamati\tAA\t41\t2,460\t512.00\t87.25\t10.8\n"
        + "26AB0007\tKiamati\tAB\t96\t5,760\t446.00\t86.00\t10.9\n"
        + "26AB0031\tThande\tAB\t130\t7,800\t470.00\t186.75\t10.7\n"
        + "26AB0044\tRukira\tAB\t75\t4,500\tTBA\t86.25\t11.0\n"
        + "26AB0002\tMutoni\tAA\t-20\t1,200\t455.00\t85.75\t13.9\n";

    // Worked by hand: 512.00 USD / 50 kg = 10.24 USD/kg.
    [Fact]
    public async Task A_preview_says_what_the_list_comes_to_and_stores_nothing()
    {
        using var script = await house.ScriptAsync(Role.Buyer);

        var answer = await SendAsync(script, Grades, "grades.tsv", ("supplier", "Preview Traders"));

        Assert.Equal(2, answer.GetProperty("accepted").GetInt32());
        var first = answer.GetProperty("offers")[0];
        Assert.Equal("26AB0007 AA", first.GetProperty("ref").GetString());
        Assert.Equal(2460m, first.GetProperty("kg").GetDecimal());
        Assert.Equal(10.24m, first.GetProperty("pricePerKg").GetProperty("amount").GetDecimal());
        Assert.Equal("USD", first.GetProperty("pricePerKg").GetProperty("currency").GetString());
        Assert.Equal(
            ["26AB0031 AB", "26AB0044 AB", "26AB0002 AA"],
            answer.GetProperty("setAside").EnumerateArray().Select(row => row.GetProperty("ref").GetString()));
        Assert.Equal([4, 5, 6], answer.GetProperty("setAside").EnumerateArray().Select(row => row.GetProperty("row").GetInt32()));
        Assert.Equal("186.75", answer.GetProperty("setAside")[0].GetProperty("values").GetProperty("CUP").GetString());
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Suppliers.CountAsync(one => one.Name == "Preview Traders")));
    }

    [Fact]
    public async Task A_list_sent_twice_is_taken_once()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        var first = await SendAsync(script, Grades, "grades.tsv", ("supplier", "Twice Traders"), ("commit", "true"));

        var second = await SendAsync(script, Grades, "grades.tsv", ("supplier", "Twice Traders"), ("commit", "true"));

        Assert.Equal((2, 0, 0), Counts(first));
        Assert.Equal((0, 0, 2), Counts(second));
        Assert.True(first.GetProperty("stored").GetBoolean());
        Assert.False(second.GetProperty("stored").GetBoolean());
        Assert.Equal(1, await house.FromLedgerAsync(db => db.OfferLists.CountAsync(list => db.Suppliers.Any(one => one.Id == list.SupplierId && one.Name == "Twice Traders"))));
    }

    [Fact]
    public async Task The_mapping_of_an_answer_can_be_corrected_and_sent_back()
    {
        using var script = await house.ScriptAsync(Role.Buyer);
        var proposed = (await SendAsync(script, Grades, "grades.tsv", ("supplier", "Mapping Traders"))).GetProperty("mapping").GetRawText();

        var answer = await SendAsync(script, Grades, "grades.tsv", ("supplier", "Mapping Traders"), ("mapping", proposed.Replace("StatedScore", "Ignored", StringComparison.Ordinal)));

        Assert.Equal(3, answer.GetProperty("accepted").GetInt32());
        Assert.All(answer.GetProperty("offers").EnumerateArray(), offer => Assert.Equal(JsonValueKind.Null, offer.GetProperty("score").ValueKind));
    }

    [Theory]
    [InlineData("", "x.csv", null, "file")]
    [InlineData("Ref;Bags\nA-1;3\n", "x.csv", "{\"columns\":[]}", "mapping")]
    [InlineData("Ref;Bags\nA-1;3\n", "x.csv", "not json", "mapping")]
    public async Task What_is_wrong_is_named_with_its_field(string text, string name, string? mapping, string field)
    {
        using var script = await house.ScriptAsync(Role.Buyer);

        var answer = await PostAsync(script, Encoding.UTF8.GetBytes(text), name, mapping is null ? [] : [("mapping", mapping)]);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var problem = await answer.Content.ReadFromJsonAsync<JsonElement>();
        Assert.True(problem.GetProperty("errors").TryGetProperty(field, out _));
    }

    [Fact]
    public async Task A_cupper_may_not_load_lists()
    {
        using var script = await house.ScriptAsync(Role.Cupper);

        var answer = await PostAsync(script, Encoding.UTF8.GetBytes(Grades), "grades.tsv");

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    private static (int Accepted, int Revised, int Unchanged) Counts(JsonElement answer) =>
        (answer.GetProperty("accepted").GetInt32(), answer.GetProperty("revised").GetInt32(), answer.GetProperty("unchanged").GetInt32());

    private static async Task<JsonElement> SendAsync(HttpClient script, string text, string name, params (string Name, string Value)[] fields)
    {
        var answer = await PostAsync(script, Encoding.UTF8.GetBytes(text), name, fields);
        Assert.True(answer.StatusCode == HttpStatusCode.OK, await answer.Content.ReadAsStringAsync());
        return await answer.Content.ReadFromJsonAsync<JsonElement>();
    }

    private static async Task<HttpResponseMessage> PostAsync(HttpClient script, byte[] file, string name, params (string Name, string Value)[] fields)
    {
        using var content = new MultipartFormDataContent { { new ByteArrayContent(file), "file", name } };
        foreach (var (field, value) in fields)
        {
            content.Add(new StringContent(value), field);
        }

        return await script.PostAsync(new Uri("/api/offers/import", UriKind.Relative), content);
    }
}
