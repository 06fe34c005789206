using System.Text.RegularExpressions;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers.Reading.Words;
using GreenLedger.Domain.Origins;

namespace GreenLedger.Domain.Offers.Reading;

/// <summary>Reads the terms of a whole list from its titles, headings, file name and sheet names.</summary>
internal static partial class TermsText
{
    /// <summary>The delivery rule that stands in the text, with its named place where one follows.</summary>
    public static (Incoterm Incoterm, string? Place)? Delivery(string text)
    {
        var match = Rule().Match(text);
        if (match.Success)
        {
            var place = match.Groups["place"].Success ? PlaceOf(match.Groups["place"].Value) : null;
            return (Enum.Parse<Incoterm>(match.Groups["rule"].Value, ignoreCase: true), place);
        }

        return TradeWords.Has("spot", SearchText.Of(text)) ? (Incoterm.ExWarehouse, null) : null;
    }

    public static DateOnly? ValidUntil(string title)
    {
        var folded = SearchText.Of(title);
        foreach (var word in TradeWords.Of("valid"))
        {
            var at = folded.IndexOf(word, StringComparison.Ordinal);
            if (at >= 0)
            {
                return DateText.Day(folded[(at + word.Length)..]) ?? DateText.Day(title);
            }
        }

        return null;
    }

    public static string? CropYearOf(string title)
    {
        var folded = SearchText.Of(title);
        return TradeWords.Of("crop").Any(word => TradeWords.HasPhrase(folded, word)) ? CropYear.Read(AfterCrop(title)) : null;
    }

    /// <summary>A symbol such as KCH27, or a market with a month: "NY (KC) março 2027", "London Jan 2027".</summary>
    public static FuturesMonth? Futures(string text, DateOnly today)
    {
        foreach (var symbol in Symbol().Matches(text).Select(match => match.Value))
        {
            if (FuturesMonth.TryParse(symbol, today, out var month))
            {
                return month;
            }
        }

        var market = Market().Match(text);
        if (!market.Success || DateText.Month(text[market.Index..]) is not { } when)
        {
            return null;
        }

        var exchange = market.Groups["robusta"].Success ? FuturesMarket.Robusta : FuturesMarket.Arabica;
        return exchange.Months().Contains(when.Month) ? FuturesMonth.Of(exchange, when.Year, when.Month) : null;
    }

    /// <summary>The sender's name as the first title gives it, without what follows a dash; null where titles are terms only.</summary>
    public static string? SenderOf(IReadOnlyList<string> titles)
    {
        foreach (var title in titles.Take(3))
        {
            var name = Dash().Split(title)[0].Trim();
            if (name.Length is >= 3 and <= 120 && !char.IsAsciiDigit(name[^1]) && Delivery(name) is null && PriceQuote.Find(name) is null && !IsKindOfList(name))
            {
                return name;
            }
        }

        return null;
    }

    private static bool IsKindOfList(string name) => ListWord().IsMatch(SearchText.Of(name));

    private static string AfterCrop(string title) =>
        CropWord().Match(title) is { Success: true } match ? title[match.Index..] : title;

    private static string? PlaceOf(string text)
    {
        var place = text.Trim(' ', ',', '.', '-', ':');
        var known = LoadingPorts.Names.FirstOrDefault(port => SearchText.Of(place).StartsWith(SearchText.Of(port), StringComparison.Ordinal));
        return known ?? (place.Length is >= 2 and <= 60 ? place : null);
    }

    [GeneratedRegex(@"(?<![\p{L}])(?<rule>EXW|FCA|FAS|FOB|CFR|CIF|CPT|CIP|DAP|DPU|DDP)(?![\p{L}])(?:\s*[:,-]?\s+(?<place>\p{Lu}[\p{L}'’.]*(?:[ -](?:de|do|da|del|la|el|es|\p{Lu}[\p{L}'’.]*))*))?", RegexOptions.CultureInvariant)]
    private static partial Regex Rule();

    [GeneratedRegex(@"(?<![\p{L}\d])(?:KC|RC)[A-Z]\d{1,2}(?!\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Symbol();

    [GeneratedRegex(@"(?<![\p{L}])(?:(?<robusta>RC|London|Londres|Liffe|Robusta)|KC|NYC?|New York|Nova York|Nueva York|Arabica)(?![\p{L}])", RegexOptions.CultureInvariant)]
    private static partial Regex Market();

    [GeneratedRegex(@"\s+[-–—|]\s+|\s*[|•]\s*")]
    private static partial Regex Dash();

    [GeneratedRegex(@"^(?:offer|offers|price|prices|stock|spot|list|lista|oferta|ofertas|precios|precos|liste|angebot|angebote|preisliste|offre|offres|prix|disponibilidad|available|coffee|coffees|cafes?)\b")]
    private static partial Regex ListWord();

    [GeneratedRegex(@"(?:crop|harvest|cosecha|zafra|safra|colheita|r[ée]colte|campagne|ernte)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CropWord();
}
