using System.Globalization;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;

namespace GreenLedger.Domain.Stock.Reading;

/// <summary>Reads the lines of a file of earlier contracts; every broken rule names its column.</summary>
/// <param name="House">The currency of landed costs that name none.</param>
/// <param name="Today">A futures month with a one-digit year is the next such.</param>
internal sealed record EarlierReader(HeadedTable<EarlierColumn> Table, Currency House, DateOnly Today)
{
    /// <param name="line">The rows of the contract, joined.</param>
    public EarlierTerms Terms(OfferLine line)
    {
        var month = Month(line);
        var outright = Outright(line);
        Rule.Require(outright is null || month is null, "The price is either outright or to be fixed: leave the price or the futures month empty. Of a contract that is fixed in full, the final price is an outright one.", nameof(EarlierColumn.Price));
        var differential = Number(line, EarlierColumn.Differential, NumberRange.Any);
        Rule.Require(month is null || differential is not null, "Write the differential to the futures month; 0 where there is none.", nameof(EarlierColumn.Differential));
        return new EarlierTerms(
            Needed(line, EarlierColumn.Contract, "The number of the contract"),
            Needed(line, EarlierColumn.Supplier, "The supplier"),
            DayNeeded(line, EarlierColumn.SignedOn, "The day of the contract is missing: write the day that it was agreed."),
            Delivery(line),
            MonthOrDay(line, EarlierColumn.ShipFrom, isEnd: false),
            MonthOrDay(line, EarlierColumn.ShipUntil, isEnd: true),
            outright, month, differential, Whole(line, EarlierColumn.MarketLots), month is null ? [] : Fixings(line), CallOf(line), IsYes(line, EarlierColumn.Approval));
    }

    /// <summary>The row; two where a part of its bags has arrived, what came first. The day on board is then that of what is to come.</summary>
    public IReadOnlyList<EarlierRow> Rows(OfferLine line)
    {
        var (bags, weight) = Packing(line);
        var (arrival, came) = (Arrival(line), Whole(line, EarlierColumn.ArrivedBags));
        EarlierRow Of(int part, EarlierLading? lading, EarlierArrival? arrived) => new(
            line, Text(line, EarlierColumn.Lot), Text(line, EarlierColumn.Name), Text(line, EarlierColumn.Country), Text(line, EarlierColumn.Process), Text(line, EarlierColumn.Crop), part, weight, lading, arrived);
        Rule.Require(came is null || arrival is not null, "Bags have arrived: write the day under Arrived on.", nameof(EarlierColumn.ArrivedOn));
        Rule.Require(came is null || (came >= 1 && came <= bags), string.Create(CultureInfo.InvariantCulture, $"Between 1 and {bags:#,0} bags of this row have arrived: leave it empty where all have."), nameof(EarlierColumn.ArrivedBags));
        return arrival is null ? [Of(bags, Lading(line, weight), null)]
            : came is null || came == bags ? [Of(bags, null, arrival)]
            : [Of(came.Value, null, arrival with { ShippedOn = null }), Of(bags - came.Value, Lading(line, weight), null)];
    }

    private (int Bags, Weight BagWeight) Packing(OfferLine line)
    {
        var (bags, each, all) = (Whole(line, EarlierColumn.Bags), Kilograms(line, EarlierColumn.BagWeight, NumberRange.BagWeight), Kilograms(line, EarlierColumn.Net, NumberRange.Quantity));
        bags ??= all is { } sum && each is { } one && sum.Micrograms % one.Micrograms == 0 && sum.Micrograms / one.Micrograms <= 100_000 ? (int)(sum.Micrograms / one.Micrograms) : null;
        Rule.Require(bags is > 0 and <= 100_000, "How many bags were contracted? Write a whole number, 1 or more, with the net weight of a bag.", nameof(EarlierColumn.Bags));
        Rule.Require(each is not null || all is not null, "Write the net weight of a bag, or of all bags.", nameof(EarlierColumn.BagWeight));
        var weight = each ?? new Weight(all!.Value.Micrograms / bags.Value);
        var (packed, stated) = (weight * bags.Value, all ?? (weight * bags.Value));
        Rule.Require(
            packed == stated,
            each is null
                ? string.Create(CultureInfo.InvariantCulture, $"{stated.Kilograms:#,0.######} kg in {bags:#,0} bags leave a bag of no even weight: write the bag weight as contracted, and what came under {EarlierWords.Told(EarlierColumn.Received).Heading}.")
                : string.Create(CultureInfo.InvariantCulture, $"{bags:#,0} bags of {weight.Kilograms:#,0.######} kg are {packed.Kilograms:#,0.######} kg, not {stated.Kilograms:#,0.######} kg: put one of them right."),
            nameof(EarlierColumn.Net));
        return (bags.Value, weight);
    }

    private EarlierLading? Lading(OfferLine line, Weight bagWeight)
    {
        var (bags, net) = (Whole(line, EarlierColumn.ShippedBags), Kilograms(line, EarlierColumn.Shipped, NumberRange.Quantity));
        if (bags is null && net is null)
        {
            Rule.Require(Text(line, EarlierColumn.ShippedOn) is null || Text(line, EarlierColumn.ArrivedOn) is not null, "It is on board: write how many bags.", nameof(EarlierColumn.ShippedBags));
            return null;
        }

        Rule.Require(bags is > 0 and <= 100_000, "How many bags are on board? Write a whole number.", nameof(EarlierColumn.ShippedBags));
        return new EarlierLading(
            DayNeeded(line, EarlierColumn.ShippedOn, "Bags are on board: write the day of the bill of lading."), bags.Value, net ?? (bagWeight * bags.Value),
            Text(line, EarlierColumn.PortOfLoading) ?? "", Text(line, EarlierColumn.PortOfDestination) ?? "", Text(line, EarlierColumn.BillOfLading), Table.Day(line, EarlierColumn.PlannedArrival));
    }

    private EarlierArrival? Arrival(OfferLine line)
    {
        if (Table.Day(line, EarlierColumn.ArrivedOn) is not { } on)
        {
            var told = new[] { EarlierColumn.Received, EarlierColumn.LandedCost, EarlierColumn.Left, EarlierColumn.LeftBags }.FirstOrDefault(column => Text(line, column) is not null, EarlierColumn.ArrivedOn);
            Rule.Require(told == EarlierColumn.ArrivedOn, "This says that it arrived: write the day under Arrived on, or leave this empty.", told.ToString());
            return null;
        }

        var points = Number(line, EarlierColumn.Score, NumberRange.Score);
        Rule.Require(points is null or (>= 0m and <= 100m), "A score lies between 0 and 100 points.", nameof(EarlierColumn.Score));
        var left = Kilograms(line, EarlierColumn.Left, NumberRange.Quantity);
        return new EarlierArrival(
            on, Kilograms(line, EarlierColumn.Received, NumberRange.Quantity), Landed(line), points is { } score ? Measures.Score.Of(score) : null,
            left is null ? 0 : Whole(line, EarlierColumn.LeftBags) ?? 0, left, Text(line, EarlierColumn.Warehouse), Table.Day(line, EarlierColumn.ShippedOn));
    }

    private PricePerWeight? Landed(OfferLine line)
    {
        var figure = Number(line, EarlierColumn.LandedCost, NumberRange.Any);
        Rule.Require(figure is null or > 0m, "What it cost lies above zero; leave it empty where you do not know.", nameof(EarlierColumn.LandedCost));
        return figure is { } cost ? PricePerWeight.Of(cost, CurrencyOf(line, EarlierColumn.LandedCurrency) ?? House, PriceUnit.Kilogram) : null;
    }

    /// <summary>The figure with what stands beside it, in the column of the currency or of the unit.</summary>
    private PricePerWeight? Outright(OfferLine line)
    {
        if (Text(line, EarlierColumn.Price) is not { } written)
        {
            return null;
        }

        var beside = $"{Text(line, EarlierColumn.Currency)}/{Text(line, EarlierColumn.Unit)?.TrimStart('/')}";
        var quote = (PriceQuote.Find(written)?.Quote ?? PriceQuote.Find(beside)?.Quote ?? new PriceQuote(null, null)).Or(PriceQuote.Find(beside)?.Quote)
            .Or(new PriceQuote(null, PriceQuote.FindUnit($"/{Text(line, EarlierColumn.Unit)}")));
        Rule.Require(quote.Currency is not null, "In which currency is the price? Write USD, EUR or another.", nameof(EarlierColumn.Currency));
        Rule.Require(quote.Unit is not null, "What does the price pay for? Write kg, lb, 46 kg, 50 kg, 60 kg, 100 lb or t.", nameof(EarlierColumn.Unit));
        var figure = Table.CellOf(line, EarlierColumn.Price).Number ?? NumberText.Read(PriceQuote.Find(written) is { } found ? written.Replace(found.Text, "", StringComparison.Ordinal) : written, quote.Range());
        Rule.Require(figure is > 0m, $"'{written}' is no price: it lies above zero.", nameof(EarlierColumn.Price));
        return quote.Price(figure.Value);
    }

    private FuturesMonth? Month(OfferLine line)
    {
        var text = Text(line, EarlierColumn.Month);
        var month = text is null ? null : TermsText.Futures(text, Today);
        Rule.Require(text is null || month is not null, $"'{text}' is no futures month: write it as KCH27, or RCF27 for London.", nameof(EarlierColumn.Month));
        return month;
    }

    private List<EarlierFixing> Fixings(OfferLine line)
    {
        var (lots, levels, days) = (Parts(line, EarlierColumn.FixedLots), Parts(line, EarlierColumn.FixedAt), Parts(line, EarlierColumn.FixedOn));
        if (lots is ["0"])
        {
            return [];
        }

        Rule.Require(lots.Length == levels.Length, "Each fixing has its lots and its level: write as many here as there, parted by a semicolon.", nameof(EarlierColumn.FixedAt));
        Rule.Require(days.Length <= 1 || days.Length == lots.Length, "Write one day for all fixings, or one for each, parted by a semicolon.", nameof(EarlierColumn.FixedOn));
        return [.. lots.Select((text, at) => new EarlierFixing(LotsOf(text), Level(levels[at]), days.Length == 0 ? null : Day(days[days.Length == 1 ? 0 : at])))];
    }

    private static int? LotsOf(string text)
    {
        if (text.Equals("all", StringComparison.OrdinalIgnoreCase))
        {
            return null;
        }

        Rule.Require(int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var lots) && lots > 0, $"'{text}' is no number of lots: write whole lots of the market, or all.", nameof(EarlierColumn.FixedLots));
        return lots;
    }

    private static decimal Level(string text)
    {
        var level = NumberText.Read(text, NumberRange.Any);
        Rule.Require(level is not null, $"'{text}' is no level of the market.", nameof(EarlierColumn.FixedAt));
        return level.Value;
    }

    private static DateOnly Day(string text)
    {
        var day = DateText.Day(text);
        Rule.Require(day is not null, $"'{text}' is not a day: write it as 2026-11-25.", nameof(EarlierColumn.FixedOn));
        return day.Value;
    }

    private (Incoterm Rule, string? Place)? Delivery(OfferLine line)
    {
        var (rule, place) = (Text(line, EarlierColumn.Incoterm), Text(line, EarlierColumn.Place));
        var found = rule is null ? null : TermsText.Delivery($"{rule} {place}".ToUpperInvariant()) ?? TermsText.Delivery(rule);
        Rule.Require(rule is null || found is not null, $"'{rule}' is no delivery rule: write FOB, CIF or another Incoterm with its place, or spot.", nameof(EarlierColumn.Incoterm));
        var behind = rule is null ? null : string.Join(' ', rule.Split(' ', StringSplitOptions.RemoveEmptyEntries).Skip(1));
        return found is { } known ? (known.Incoterm, place ?? (string.IsNullOrWhiteSpace(behind) ? null : behind)) : null;
    }

    private Caller CallOf(OfferLine line)
    {
        var text = Text(line, EarlierColumn.Call);
        var word = SearchText.Of(text);
        var isSeller = word.StartsWith("seller", StringComparison.Ordinal) || word is "vendedor" or "vendeur" or "verkaufer";
        Rule.Require(text is null || isSeller || word.StartsWith("buyer", StringComparison.Ordinal) || word is "comprador" or "acheteur" or "kaufer", $"'{text}' is neither buyer nor seller.", nameof(EarlierColumn.Call));
        return isSeller ? Caller.Seller : Caller.Buyer;
    }

    private bool IsYes(OfferLine line, EarlierColumn column)
    {
        var word = SearchText.Of(Text(line, column));
        var isYes = word is "yes" or "y" or "x" or "si" or "sim" or "oui" or "ja" or "1" or "true";
        Rule.Require(isYes || word is "" or "no" or "n" or "nao" or "non" or "nein" or "0" or "false", $"'{Text(line, column)}' is neither yes nor no.", column.ToString());
        return isYes;
    }

    /// <summary>A month stands for its first day, or its last.</summary>
    private DateOnly? MonthOrDay(OfferLine line, EarlierColumn column, bool isEnd)
    {
        var cell = Table.CellOf(line, column);
        return cell is { Date: null, IsEmpty: false } && DateText.Day(cell.Trimmed) is null && DateText.Month(cell.Trimmed) is { } month
            ? new DateOnly(month.Year, month.Month, isEnd ? DateTime.DaysInMonth(month.Year, month.Month) : 1)
            : Table.Day(line, column);
    }

    private Currency? CurrencyOf(OfferLine line, EarlierColumn column)
    {
        var text = Text(line, column);
        var found = Measures.Currency.TryParse(text, null, out var currency);
        Rule.Require(text is null || found, $"'{text}' is no currency: write its three letters, such as EUR.", column.ToString());
        return found ? currency : null;
    }

    private int? Whole(OfferLine line, EarlierColumn column)
    {
        var number = Number(line, column, NumberRange.Bags);
        Rule.Require(number is null || (number is >= 0m and <= 1_000_000m && number == decimal.Truncate(number.Value)), $"'{Text(line, column)}' is no whole number.", column.ToString());
        return number is { } whole ? decimal.ToInt32(whole) : null;
    }

    private Weight? Kilograms(OfferLine line, EarlierColumn column, NumberRange range)
    {
        var number = Number(line, column, range);
        Rule.Require(number is null or (> 0m and <= 100_000_000m), $"'{Text(line, column)}' kg is no weight: it lies above zero; leave it empty where there is none.", column.ToString());
        return number is { } kilograms ? Weight.FromKilograms(kilograms) : null;
    }

    private string Needed(OfferLine line, EarlierColumn column, string what) => Rule.Text(Text(line, column), what, field: column.ToString());

    private DateOnly DayNeeded(OfferLine line, EarlierColumn column, string otherwise)
    {
        var day = Table.Day(line, column);
        Rule.Require(day is not null, otherwise, column.ToString());
        return day.Value;
    }

    private string[] Parts(OfferLine line, EarlierColumn column) => Table.CellOf(line, column) switch
    {
        { IsEmpty: true } => [],
        { Number: { } number } => [number.ToString(CultureInfo.InvariantCulture)],
        { Date: { } day } => [day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)],
        var cell => cell.Trimmed.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries),
    };

    private decimal? Number(OfferLine line, EarlierColumn column, NumberRange range) => Table.Number(line, column, range);

    private string? Text(OfferLine line, EarlierColumn column) => Table.Text(line, column);
}
