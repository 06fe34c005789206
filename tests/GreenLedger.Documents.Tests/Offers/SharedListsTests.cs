using System.Globalization;
using System.Text.Json;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;

namespace GreenLedger.Documents.Tests.Offers;

/// <summary>
/// The four lists come out as expected.json beside them says: every figure here is that file's.
/// </summary>
public sealed class SharedListsTests
{
    public static TheoryData<string> Lists() => [.. Expected().RootElement.EnumerateObject().Select(list => list.Name)];

    [Theory]
    [MemberData(nameof(Lists))]
    public void A_list_comes_out_as_expected(string name)
    {
        var expected = Expected().RootElement.GetProperty(name);

        var reading = Received.Read(SharedInputs.Read(name), name);

        Assert.Equal(expected.GetProperty("offers").GetInt32(), reading.Rows.Count);
        CheckTerms(expected, reading.Rows);
        CheckRows(expected, reading.Rows);
        CheckSetAside(expected, reading.SetAside.Select(row => row.Problem.Message).ToList());
    }

    private static void CheckTerms(JsonElement expected, IReadOnlyList<OfferRow> rows)
    {
        Check(expected, "sold", value => Assert.Equal(value.GetInt32(), rows.Count(row => row.State == OfferState.Sold)));
        Check(expected, "available", value => Assert.Equal(value.GetInt32(), rows.Count(row => row.State == OfferState.OnOffer)));
        Check(expected, "incoterm", value => Assert.All(rows, row => Assert.Equal(value.GetString(), row.Terms.Incoterm?.Word())));
        Check(expected, "place", value => Assert.All(rows, row => Assert.Equal(value.GetString(), row.Terms.Place)));
        Check(expected, "currency", value => Assert.All(rows, row => Assert.Equal(value.GetString(), row.Asking.Price?.Currency.Code)));
        Check(expected, "valid_until", value => Assert.All(rows, row => Assert.Equal(DateOnly.Parse(value.GetString()!, CultureInfo.InvariantCulture), row.Terms.ValidUntil)));
        Check(expected, "basis", value => Assert.All(rows, row => Assert.Equal("KCH27", row.Asking.Differential?.Month.ToString())));
        Check(expected, "first_usd_per_kg", value => Assert.Equal(value.GetDecimal(), rows[0].Asking.Price?.PerKilogram));
        Check(expected, "price_unit", value => Assert.All(rows, row => Assert.Equal(value.GetString(), $"{row.Asking.Price?.Currency} per {Domain.Measures.PriceUnits.Sign(row.Asking.Price!.Value.Unit)}")));
    }

    private static void CheckRows(JsonElement expected, IReadOnlyList<OfferRow> rows)
    {
        Check(expected, "rows", list =>
        {
            foreach (var (row, offer) in list.EnumerateArray().Zip(rows))
            {
                Assert.Equal(row.GetProperty("ref").GetString(), offer.Ref);
                Assert.Equal(row.GetProperty("kg").GetDecimal(), offer.Packing.Net?.Kilograms);
                Check(row, "usd_per_kg", value => Assert.Equal(value.GetDecimal(), Math.Round(offer.Asking.Price!.Value.PerKilogram, 4)));
                Check(row, "eur_per_kg", value => Assert.Equal(value.GetDecimal(), offer.Asking.Price!.Value.PerKilogram));
                Check(row, "differential_cents_per_lb", value => Assert.Equal(value.GetDecimal(), offer.Asking.Differential!.Value.Quoted));
                Check(row, "score", value => Assert.Equal(value.GetDecimal(), offer.StatedScore!.Value.Points));
                Check(row, "process", value => Assert.Equal(value.GetString(), offer.Process?.Name));
            }
        });
    }

    private static void CheckSetAside(JsonElement expected, List<string> messages)
    {
        Check(expected, "set_aside", value => Assert.Equal(
            value.EnumerateObject().Select(row => row.Value.GetString()).Order(),
            value.EnumerateObject().Select(row => row.Value.GetString()).Where(reason => messages.Any(message => Says(message, reason!))).Order()));
        Assert.Equal(expected.TryGetProperty("set_aside", out var rows) ? rows.EnumerateObject().Count() : 0, messages.Count);
    }

    private static bool Says(string message, string reason) => message.Contains(reason, StringComparison.OrdinalIgnoreCase);

    private static void Check(JsonElement expected, string name, Action<JsonElement> check)
    {
        if (expected.TryGetProperty(name, out var value))
        {
            check(value);
        }
    }

    private static JsonDocument Expected() => JsonDocument.Parse(SharedInputs.Read("expected.json"));
}
