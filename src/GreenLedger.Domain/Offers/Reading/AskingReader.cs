using System.Text.RegularExpressions;
using GreenLedger.Domain.Measures;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>Reads what a row asks: an outright price in its currency and unit, or a differential and its futures month.</summary>
internal static partial class AskingReader
{
    public static Asking Read(OfferLine line, SheetColumns columns, OfferMapping mapping, OfferState state, ListReference reference, RowProblems problems)
    {
        var priceCell = columns.Cell(line, ColumnMeaning.Price);
        var differentialCell = columns.Cell(line, ColumnMeaning.Differential);
        if (!priceCell.IsEmpty && !differentialCell.IsEmpty)
        {
            problems.Add(ColumnMeaning.Price, "The row states both a price and a differential: leave one of them empty.");
            return Asking.Nothing;
        }

        if (!differentialCell.IsEmpty || (priceCell.Number is null && IsDifferential(priceCell.Text)))
        {
            var meaning = differentialCell.IsEmpty ? ColumnMeaning.Price : ColumnMeaning.Differential;
            return Differential(line, columns, meaning, mapping, reference, problems);
        }

        if (!priceCell.IsEmpty)
        {
            return Price(priceCell, line, columns, mapping, state, problems);
        }

        if (state == OfferState.OnOffer && (columns.Has(ColumnMeaning.Price) || columns.Has(ColumnMeaning.Differential)))
        {
            problems.Add(columns.Has(ColumnMeaning.Price) ? ColumnMeaning.Price : ColumnMeaning.Differential, "The price is missing: type it, or take the row in once it is named.");
        }

        return Asking.Nothing;
    }

    private static Asking Price(Cell cell, OfferLine line, SheetColumns columns, OfferMapping mapping, OfferState state, RowProblems problems)
    {
        var own = cell.Number is null ? PriceQuote.Find(cell.Text) : null;
        var stated = new PriceQuote(columns.Text(line, ColumnMeaning.Currency), UnitIn(line, columns));
        var quote = (own?.Quote ?? new PriceQuote(null, null))
            .Or(stated.Currency is null ? stated : PriceQuote.Find(stated.Currency)?.Quote.Or(stated))
            .Or(columns.Column(ColumnMeaning.Price)!.Quote).Or(mapping.Terms.Quote);
        var figure = own is null ? NumberText.Read(cell, quote.Range()) : NumberText.Read(cell.Text.Replace(own.Value.Text, "", StringComparison.Ordinal), quote.Range());
        if (figure is null)
        {
            if (state == OfferState.OnOffer)
            {
                problems.Add(ColumnMeaning.Price, $"The price is not a number ('{cell.Trimmed}'): type the price, or take the row in once it is named.");
            }

            return Asking.Nothing;
        }

        if (!quote.IsWhole)
        {
            problems.Add(ColumnMeaning.Price, $"The price {RowProblems.Figure(figure.Value)} has no currency or unit: choose them for its column, such as US cents/lb.");
            return Asking.Nothing;
        }

        if (!Currency.TryParse(quote.Currency, null, out _))
        {
            problems.Add(ColumnMeaning.Currency, $"'{quote.Currency}' is not a currency code of ISO 4217: write one such as USD.");
            return Asking.Nothing;
        }

        if (figure is <= 0m or > 100_000_000m)
        {
            problems.Add(ColumnMeaning.Price, $"A price of {RowProblems.Figure(figure.Value)} cannot be: type what is asked.");
            return Asking.Nothing;
        }

        return Asking.Outright(quote.Price(figure.Value));
    }

    private static PriceUnit? UnitIn(OfferLine line, SheetColumns columns) =>
        columns.Text(line, ColumnMeaning.PriceUnit) is { } text
            ? PriceQuote.Find(text)?.Quote.Unit ?? PriceQuote.FindUnit("/" + text)
            : null;

    private static Asking Differential(
        OfferLine line, SheetColumns columns, ColumnMeaning meaning, OfferMapping mapping, ListReference reference, RowProblems problems)
    {
        var cell = columns.Cell(line, meaning);
        if (Month(line, columns, cell, mapping, reference) is not { } month)
        {
            problems.Add(meaning, $"The differential '{cell.Trimmed}' has no futures month: choose it for the list, such as KCH27.");
            return Asking.Nothing;
        }

        var text = cell.Number is null ? MarketAndMonth().Replace(cell.Text, "") : "";
        var own = PriceQuote.Find(text);
        var bare = own is null ? text : text.Replace(own.Value.Text, "", StringComparison.Ordinal);
        var range = new NumberRange(0, month.Market == FuturesMarket.Arabica ? 500 : 5000, month.Market == FuturesMarket.Robusta);
        if ((cell.Number ?? NumberText.Read(bare.Replace("+", "", StringComparison.Ordinal), range)) is not { } figure || Math.Abs(figure) > 100_000m)
        {
            problems.Add(meaning, $"The differential is not a number ('{cell.Trimmed}'): type it in {month.Market.QuoteUnit()}.");
            return Asking.Nothing;
        }

        var quote = own is { Quote.IsWhole: true } ? own.Value.Quote : columns.Column(meaning)!.Quote;
        return Asking.Against(Measures.Differential.Of(month, Quoted(figure, quote, month.Market)));
    }

    /// <summary>The figure in the unit of the market, where the column quotes another one in dollars.</summary>
    private static decimal Quoted(decimal figure, PriceQuote? quote, FuturesMarket market)
    {
        var isMarketUnit = quote is not { IsWhole: true, Currency: "USD" }
            || (market == FuturesMarket.Arabica ? quote is { Unit: PriceUnit.Pound, InCents: true } : quote is { Unit: PriceUnit.Tonne, InCents: false });
        return isMarketUnit ? figure : Math.Round(market.Quoted(quote!.Price(figure)), 4, MidpointRounding.AwayFromZero);
    }

    private static FuturesMonth? Month(OfferLine line, SheetColumns columns, Cell cell, OfferMapping mapping, ListReference reference)
    {
        var stated = columns.Text(line, ColumnMeaning.FuturesMonth) ?? (cell.Number is null ? cell.Text : null);
        var own = stated is null ? null : TermsText.Futures(stated, reference.Today);
        return own ?? (FuturesMonth.TryParse(mapping.Terms.FuturesMonth, null, out var month) ? month : null);
    }

    private static bool IsDifferential(string text) => text.Length > 0 && MarketAndMonth().IsMatch(text);

    [GeneratedRegex(@"(?<![\p{L}])(?:(?:KC|RC)[FGHJKMNQUVXZ]\d{1,4}|(?:KC|RC|NYC?|LDN|London|Liffe)(?:\s*[""'(]?[A-Z]?[)""']?\s*\p{L}{3,9}\.?\s*['-]?\d{2,4})?)(?=[\s+:(−–-])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex MarketAndMonth();
}
