using System.Text.Json;
using System.Text.Json.Serialization;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// What one column of a list holds. Columns are known by their heading, so that a list whose columns were moved is still
/// read; a column without a heading is called by its letter, "column C".
/// </summary>
public sealed record MappedColumn(string Heading, ColumnMeaning Meaning, WeightUnit? Unit = null, PriceQuote? Quote = null);

/// <summary>
/// Terms that hold for every row of a list where the row says nothing else. Null is "not stated".
/// </summary>
public sealed record ListTerms
{
    /// <summary>Currency and unit of prices whose column does not name them.</summary>
    public PriceQuote? Quote { get; init; }

    /// <summary>The futures month of differentials: <c>KCH27</c>.</summary>
    public string? FuturesMonth { get; init; }

    public Incoterm? Incoterm { get; init; }

    public string? Place { get; init; }

    public DateOnly? ValidUntil { get; init; }

    public string? CropYear { get; init; }

    /// <summary>Country of origin, ISO 3166-1 alpha-2.</summary>
    public string? CountryCode { get; init; }

    /// <summary>What one bag holds, in kg, where no column says it.</summary>
    public decimal? BagKg { get; init; }

    /// <summary>An outturn is a lot only together with its grade: the reference is then both.</summary>
    public bool RefWithGrade { get; init; }
}

/// <summary>How a list is read: what each column holds and the terms of the whole list.</summary>
public sealed record OfferMapping(IReadOnlyList<MappedColumn> Columns, ListTerms Terms)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter() },
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        AllowDuplicateProperties = false,
    };

    /// <summary>By what the next list of a supplier is recognised: the folded headings, joined by bars.</summary>
    [JsonIgnore]
    public string Headings => HeadingsOf(Columns.Select(column => column.Heading));

    public static string HeadingsOf(IEnumerable<string> headings) => string.Join('|', headings.Select(heading => SearchText.Of(heading)));

    public bool Has(ColumnMeaning meaning) => Columns.Any(column => column.Meaning == meaning);

    /// <summary>
    /// This proposal for a newer list with the columns of the one that the buyer confirmed before. What changes from list
    /// to list (validity, crop, futures month) is taken from the newer list only.
    /// </summary>
    public OfferMapping Remembering(OfferMapping confirmed) => confirmed with
    {
        Terms = Terms with
        {
            Quote = Terms.Quote ?? confirmed.Terms.Quote,
            Incoterm = Terms.Incoterm ?? confirmed.Terms.Incoterm,
            Place = Terms.Place ?? confirmed.Terms.Place,
            CountryCode = Terms.CountryCode ?? confirmed.Terms.CountryCode,
            BagKg = confirmed.Terms.BagKg ?? Terms.BagKg,
            RefWithGrade = confirmed.Terms.RefWithGrade,
        },
    };

    public string ToJson() => JsonSerializer.Serialize(this, Json);

    /// <summary>Reads a mapping that <see cref="ToJson"/> or a caller of the API wrote.</summary>
    /// <exception cref="RuleBrokenException">The text is not a mapping.</exception>
    public static OfferMapping FromJson(string json)
    {
        try
        {
            var mapping = JsonSerializer.Deserialize<OfferMapping>(json, Json);
            Rule.Require(mapping is { Columns: not null, Terms: not null }, "The mapping needs columns and terms.", "Mapping");
            mapping.Check();
            return mapping;
        }
        catch (JsonException wrong)
        {
            throw new RuleBrokenException($"The mapping is not valid JSON of columns and terms: {wrong.Message}", "Mapping");
        }
    }

    /// <exception cref="RuleBrokenException">Two columns have one meaning, nothing names the lots, or a currency is unknown.</exception>
    public void Check()
    {
        var twice = Columns.Where(column => !column.Meaning.IsJoined()).GroupBy(column => column.Meaning).FirstOrDefault(group => group.Count() > 1);
        Rule.Require(twice is null, $"Two columns are both called {twice?.Key.Word()}: choose one of them.", "Mapping");
        Rule.Require(
            Has(ColumnMeaning.Ref) || Has(ColumnMeaning.Name) || Has(ColumnMeaning.Producer),
            "Choose the column that names the lot: its reference, its name or its producer.",
            "Mapping");
        foreach (var quote in Columns.Select(column => column.Quote).Append(Terms.Quote).Where(quote => quote?.Currency is not null))
        {
            Rule.Require(Currency.TryParse(quote!.Currency, null, out _), $"'{quote.Currency}' is not a currency code of ISO 4217.", "Mapping");
        }

        Rule.Require(
            Terms.FuturesMonth is null || FuturesMonth.TryParse(Terms.FuturesMonth, null, out _),
            $"'{Terms.FuturesMonth}' is not a futures month: write it as KCH27 or RCF27.",
            "Mapping");
        Rule.Require(Terms.BagKg is null or (> 0m and <= 5000m), "What a bag holds lies between 0 and 5,000 kg.", "Mapping");
    }
}
