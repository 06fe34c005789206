using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers.Reading.Words;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>
/// Proposes what each column holds and the terms of the whole list, from headings in five languages, from the values
/// below them and from titles. The buyer corrects it before anything is read by it.
/// </summary>
public static class MappingProposal
{
    public static OfferMapping Of(ListLook look, ListReference reference, string? supplierCountry = null)
    {
        var columns = Distinct([.. look.Headings.Select(heading => Propose(heading, look.Samples[heading], reference))]);
        columns = [.. columns.Select(column => WithQuote(column.Column, look))];
        columns = WithDifferential(columns, look);
        var chosen = columns.Select(column => column.Column).ToList();
        return new OfferMapping(chosen, Terms(look, chosen, reference, supplierCountry));
    }

    /// <summary>The sender's name as the titles give it; null where there is none.</summary>
    public static string? SenderOf(ListLook look) => TermsText.SenderOf(look.Titles);

    /// <summary>The language that most headings are in, ISO 639-1.</summary>
    public static string LanguageOf(ListLook look) => TradeWords.Language(look.Headings);

    private static Proposed Propose(string heading, IReadOnlyList<Cell> sample, ListReference reference)
    {
        var quote = PriceQuote.Find(heading);
        var words = quote is { Quote.IsWhole: true } whole ? heading.Replace(whole.Text, " ", StringComparison.Ordinal) : heading;
        if (TradeWords.Heading(words) is { } known)
        {
            return new Proposed(new MappedColumn(heading, known.Meaning, UnitOf(known.Meaning, heading)), known.Weight);
        }

        if (quote is { Quote.IsWhole: true })
        {
            return new Proposed(new MappedColumn(heading, ColumnMeaning.Price), 90);
        }

        return ValueProposal.Of(sample, reference) is { } meaning
            ? new Proposed(new MappedColumn(heading, meaning), 1)
            : new Proposed(new MappedColumn(heading, ColumnMeaning.Ignored), 0);
    }

    private static WeightUnit? UnitOf(ColumnMeaning meaning, string heading) => meaning switch
    {
        ColumnMeaning.NetWeight => QuantityText.UnitOf(heading) is { } unit and not WeightUnit.Bags ? unit : WeightUnit.Kilogram,
        ColumnMeaning.BagWeight => QuantityText.UnitOf(heading) is WeightUnit.Pound ? WeightUnit.Pound : WeightUnit.Kilogram,
        ColumnMeaning.Quantity => QuantityText.UnitOf(heading),
        ColumnMeaning.LeastBags => QuantityText.UnitOf(heading) ?? WeightUnit.Bags,
        _ => null,
    };

    /// <summary>Of two columns with one meaning the better match keeps it; a second producer or reference column names the lot.</summary>
    private static List<Proposed> Distinct(List<Proposed> columns)
    {
        foreach (var group in columns.Where(column => !column.Column.Meaning.IsJoined()).GroupBy(column => column.Column.Meaning).ToList())
        {
            foreach (var lesser in group.OrderByDescending(column => column.Weight).Skip(1))
            {
                var isFree = group.Key is ColumnMeaning.Producer or ColumnMeaning.Ref && columns.All(column => column.Column.Meaning != ColumnMeaning.Name);
                columns[columns.IndexOf(lesser)] = new Proposed(
                    lesser.Column with { Meaning = isFree ? ColumnMeaning.Name : ColumnMeaning.Ignored, Unit = null }, lesser.Weight);
            }
        }

        return columns;
    }

    /// <summary>The unit beside a price in its heading, else in most of its cells.</summary>
    private static Proposed WithQuote(MappedColumn column, ListLook look)
    {
        if (column.Meaning is not (ColumnMeaning.Price or ColumnMeaning.Differential))
        {
            return new Proposed(column, 0);
        }

        var quote = PriceQuote.Find(column.Heading)?.Quote ?? (PriceQuote.FindUnit(column.Heading) is { } unit ? new PriceQuote(null, unit) : null);
        return new Proposed(column with { Quote = quote }, 0);
    }

    /// <summary>A column called price whose values carry signs, in a list that names a futures month, holds differentials.</summary>
    private static List<Proposed> WithDifferential(List<Proposed> columns, ListLook look)
    {
        var at = columns.FindIndex(column => column.Column.Meaning == ColumnMeaning.Price);
        if (at < 0 || columns.Any(column => column.Column.Meaning == ColumnMeaning.Differential))
        {
            return columns;
        }

        var texts = look.Samples[columns[at].Column.Heading].Where(cell => !cell.IsEmpty).ToList();
        var signed = texts.Count(cell => cell.Number is < 0m || cell.Trimmed.StartsWith('+') || cell.Trimmed.StartsWith('-'));
        if (signed * 2 > texts.Count)
        {
            columns[at] = new Proposed(columns[at].Column with { Meaning = ColumnMeaning.Differential }, 0);
        }

        return columns;
    }

    private static ListTerms Terms(ListLook look, List<MappedColumn> columns, ListReference reference, string? supplierCountry)
    {
        var texts = look.Titles.Concat(columns.Select(column => column.Heading)).ToList();
        var delivery = First(texts, TermsText.Delivery) ?? Spot(look, columns);
        var isDifferential = columns.Any(column => column.Meaning == ColumnMeaning.Differential);
        var refHeading = SearchText.Of(columns.FirstOrDefault(column => column.Meaning == ColumnMeaning.Ref)?.Heading);
        var isOutturn = TradeWords.Has("outturn", refHeading) && columns.Any(column => column.Meaning == ColumnMeaning.Grade);
        return new ListTerms
        {
            Quote = First(look.Titles, title => PriceQuote.Find(title)?.Quote),
            FuturesMonth = isDifferential && First(texts, text => TermsText.Futures(text, reference.Today)) is { } month ? month.ToString() : null,
            Incoterm = delivery?.Incoterm,
            Place = delivery?.Place ?? First(look.Titles, title => TermsText.Delivery(title)?.Place),
            ValidUntil = First(look.Titles, TermsText.ValidUntil),
            CropYear = FirstText(look.Titles.Concat(look.Sheets), TermsText.CropYearOf),
            CountryCode = CountryOf(look, columns, delivery?.Place, isOutturn, reference, supplierCountry),
            BagKg = ValueProposal.BagKg(look, columns),
            RefWithGrade = isOutturn,
        };
    }

    /// <summary>A reference called after a warehouse, or a file named spot, is a list of coffee already landed.</summary>
    private static (Incoterm, string?)? Spot(ListLook look, List<MappedColumn> columns)
    {
        var refHeading = SearchText.Of(columns.FirstOrDefault(column => column.Meaning == ColumnMeaning.Ref)?.Heading);
        return TradeWords.Has("warehouse", refHeading) || TradeWords.Has("spot", SearchText.Of(look.FileName)) ? (Incoterm.ExWarehouse, null) : null;
    }

    /// <summary>
    /// Where no column says the country: a title that names one, the country of the port, Kenya for an outturn (the word is
    /// in use there only, common practice), or where the supplier sits.
    /// </summary>
    private static string? CountryOf(
        ListLook look, List<MappedColumn> columns, string? place, bool isOutturn, ListReference reference, string? supplierCountry)
    {
        if (columns.Any(column => column.Meaning == ColumnMeaning.Country))
        {
            return null;
        }

        var origin = FirstText(look.Titles.SelectMany(title => title.Split([' ', ',', '-', '|'])).Select(word => SearchText.Of(word)).Where(word => word.Length > 3), reference.CountryOf);
        var guess = origin ?? LoadingPorts.CountryOf(place) ?? (isOutturn ? "KE" : supplierCountry);
        return reference.Countries.Any(country => country.Code == guess) ? guess : null;
    }

    private static T? First<T>(IEnumerable<string> texts, Func<string, T?> read)
        where T : struct => texts.Select(read).FirstOrDefault(found => found is not null);

    private static PriceQuote? First(IEnumerable<string> texts, Func<string, PriceQuote?> read) => texts.Select(read).FirstOrDefault(found => found is not null);

    private static string? First(IEnumerable<string> texts, Func<string, string?> read) => FirstText(texts, read);

    private static string? FirstText(IEnumerable<string> texts, Func<string, string?> read) => texts.Select(read).FirstOrDefault(found => found is not null);

    private sealed record Proposed(MappedColumn Column, int Weight);
}
