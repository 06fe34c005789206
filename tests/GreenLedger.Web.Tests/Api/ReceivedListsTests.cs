using System.Text.Json;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Offers;

namespace GreenLedger.Web.Tests.Api;

/// <summary>The lists in tests/inputs through the API: every expected figure is that of expected.json beside them.</summary>
public sealed class ReceivedListsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    public static TheoryData<string> Lists() => ReceivedLists.Names();

    [Theory]
    [MemberData(nameof(Lists))]
    public async Task A_list_comes_out_as_expected(string name)
    {
        var expected = ReceivedLists.Expected(name);
        using var script = await house.ScriptAsync(Role.Buyer);

        var answer = await ReceivedLists.LoadAsync(script, name);

        var offers = answer.GetProperty("offers").EnumerateArray().ToList();
        Assert.Equal(expected.GetProperty("offers").GetInt32(), offers.Count);
        Assert.Equal(offers.Count, answer.GetProperty("accepted").GetInt32());
        CheckTerms(expected, offers);
        CheckRows(expected, offers);
        CheckSetAside(expected, answer.GetProperty("setAside").EnumerateArray().ToList());
    }

    private static void CheckTerms(JsonElement expected, List<JsonElement> offers)
    {
        expected.Where("sold", count => Assert.Equal(count.GetInt32(), offers.Count(offer => Text(offer, "state") == "sold")));
        expected.Where("available", count => Assert.Equal(count.GetInt32(), offers.Count(offer => Text(offer, "state") == "on offer")));
        expected.Where("incoterm", term => Assert.All(offers, offer => Assert.Equal(term.GetString(), Text(offer, "incoterm"))));
        expected.Where("place", place => Assert.All(offers, offer => Assert.Equal(place.GetString(), Text(offer, "place"))));
        expected.Where("valid_until", day => Assert.All(offers, offer => Assert.Equal(day.GetString(), Text(offer, "validUntil"))));
        expected.Where("basis", _ => Assert.All(offers, offer => Assert.Equal("KCH27", Text(offer, "futuresMonth")))); // KC March 2027: H is March (ICE's month letters)
        expected.Where("currency", code => Assert.All(offers, offer => Assert.Equal(code.GetString(), Text(offer.GetProperty("pricePerKg"), "currency"))));
        expected.Where("first_usd_per_kg", amount => Assert.Equal(amount.GetDecimal(), offers[0].GetProperty("pricePerKg").GetProperty("amount").GetDecimal()));
    }

    private static void CheckRows(JsonElement expected, List<JsonElement> offers) => expected.Where("rows", rows =>
    {
        foreach (var (row, offer) in rows.EnumerateArray().Zip(offers))
        {
            Assert.Equal(Text(row, "ref"), Text(offer, "ref"));
            Assert.Equal(row.GetProperty("kg").GetDecimal(), offer.GetProperty("kg").GetDecimal());
            row.Where("usd_per_kg", amount => Assert.Equal((amount.GetDecimal(), "USD"), PriceOf(offer)));
            row.Where("eur_per_kg", amount => Assert.Equal((amount.GetDecimal(), "EUR"), PriceOf(offer)));
            row.Where("differential_cents_per_lb", cents => Assert.Equal(cents.GetDecimal(), offer.GetProperty("differentialCentsPerLb").GetDecimal()));
            row.Where("score", score => Assert.Equal(score.GetDecimal(), offer.GetProperty("score").GetDecimal()));
            row.Where("process", process => Assert.Equal(process.GetString(), Text(offer, "process")));
        }
    });

    private static void CheckSetAside(JsonElement expected, List<JsonElement> setAside)
    {
        Assert.Equal(ReceivedLists.SetAside(expected), setAside.Count);
        expected.Where("set_aside", rows => Assert.All(rows.EnumerateObject(), row => Assert.Contains(
            row.Value.GetString()!, Text(setAside.Single(one => Text(one, "ref") == row.Name), "reason"), StringComparison.OrdinalIgnoreCase)));
    }

    private static (decimal Amount, string? Currency) PriceOf(JsonElement offer) =>
        (offer.GetProperty("pricePerKg").GetProperty("amount").GetDecimal(), Text(offer.GetProperty("pricePerKg"), "currency"));

    private static string? Text(JsonElement row, string name) => row.GetProperty(name).GetString();
}
