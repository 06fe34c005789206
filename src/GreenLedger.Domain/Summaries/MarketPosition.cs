using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Summaries;

/// <summary>A signed contract with what of it is still to arrive and what lies in stock, as weighed.</summary>
public sealed record HeldContract(Contract Contract, Weight ToCome, Weight InStock);

/// <summary>Stock that no contract of the ledger brought, as weighed.</summary>
/// <param name="Month">Against which its offer asked a differential; null where none did.</param>
public sealed record LooseStock(FuturesMonth? Month, Weight Weighed);

/// <summary>What the house holds that no move of a market touches, and why.</summary>
/// <param name="Held">Still to come and in stock.</param>
public sealed record UnmovedStock(string Name, Weight Held, string Reason);

/// <summary>
/// What the house has bought and holds by futures month: contracted, priced, unpriced, still to come and in stock, and what a
/// move of the market does to it (handbook, trade 2.3 and 11). Kilograms are shares of the contract's net weight and add up
/// to it; lots and money follow the lots of the exchange that the contract agreed.
/// </summary>
public sealed record MarketPosition(IReadOnlyList<PositionRow> Rows)
{
    /// <summary>Of all rows, whose months may be of two markets; its lots mean nothing then.</summary>
    public PositionRow Total => new(null, [.. Rows.SelectMany(row => row.Parts)]);

    /// <summary>What stands against no futures month, so that a move of the market leaves it as it is.</summary>
    public IReadOnlyList<UnmovedStock> NotMoved =>
    [
        .. Rows.Where(row => row.Month is null && row.Held > Weight.Zero).Select(row => row.IsOutright
            ? new UnmovedStock(row.Name, row.Held, "its price names no futures month")
            : new UnmovedStock(row.Name, row.Held, "no contract and no offer names a futures month for it")),
    ];

    /// <summary>Months first, the nearest first; then outright prices, then stock that no contract brought.</summary>
    /// <param name="contracts">Signed and not cancelled.</param>
    /// <param name="withoutContract">From no contract of the ledger.</param>
    public static MarketPosition Of(IEnumerable<HeldContract> contracts, IEnumerable<LooseStock> withoutContract)
    {
        ArgumentNullException.ThrowIfNull(contracts);
        var parts = contracts.SelectMany(PositionPart.Of).Where(part => !part.IsNothing).ToList();
        parts.AddRange(withoutContract.Where(loose => loose.Weighed > Weight.Zero).GroupBy(loose => loose.Month)
            .Select(month => new PositionPart(month.Key, null, "", "", Weight.Zero, Weight.Zero, Weight.Zero, Weight.Zero, month.Aggregate(Weight.Zero, (sum, loose) => sum + loose.Weighed))));
        return new MarketPosition(
        [
            .. parts.GroupBy(part => (part.Month, HasContract: part.ContractId is not null))
                .OrderBy(group => group.Key.Month is null).ThenBy(group => group.Key.Month).ThenByDescending(group => group.Key.HasContract)
                .Select(group => new PositionRow(group.Key.Month, [.. group.OrderBy(part => part.Ref, StringComparer.Ordinal)])),
        ]);
    }

    /// <summary>What each month would do if its market moved; months whose market stays are left out.</summary>
    /// <param name="changes">As the market quotes: US cents/lb or USD/t, below zero for a fall.</param>
    /// <param name="quotes">The quotes known.</param>
    /// <param name="asOf">The day whose quotes hold.</param>
    /// <exception cref="RuleBrokenException">A level would fall to zero or below.</exception>
    public IReadOnlyList<MarketMove> IfMoved(IReadOnlyDictionary<FuturesMarket, decimal> changes, FuturesQuotes quotes, DateOnly asOf)
    {
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentNullException.ThrowIfNull(quotes);
        return
        [
            .. Rows.Where(row => row.Month is { } month && changes.GetValueOrDefault(month.Market) != 0m)
                .Select(row => MarketMove.Of(row, changes[row.Month!.Value.Market], quotes.Find(row.Month.Value, asOf))),
        ];
    }
}

/// <summary>What stands against one futures month, or against none.</summary>
/// <param name="Month">Null for outright prices and for stock without a contract.</param>
/// <param name="Parts">The contracts that it is made of.</param>
public sealed record PositionRow(FuturesMonth? Month, IReadOnlyList<PositionPart> Parts)
{
    private static readonly PricePerWeight OneCent = PricePerWeight.FromCentsPerPound(1m);

    public bool HasContract => Parts.Any(part => part.ContractId is not null);

    public bool IsOutright => Month is null && HasContract;

    /// <summary>As screens and API name it.</summary>
    public string Name => (Month, HasContract) switch
    {
        ({ } month, true) => month.ToString(),
        ({ } month, false) => $"{month}, no contract",
        (null, true) => "Outright",
        _ => "No contract",
    };

    /// <summary>What the house would have to buy again: still to come and in stock.</summary>
    public Weight Held => ToCome + InStock;

    public Weight Contracted => Sum(part => part.Contracted);

    public Weight Priced => Contracted - Unpriced;

    public Weight Unpriced => Sum(part => part.Unpriced);

    /// <summary>What is still to be fixed on the exchange: whole lots as agreed, or the weight itself where it is fixed by weight.</summary>
    public Weight ToFix => Sum(part => part.ToFix);

    /// <summary>Unpriced lots of the exchange, unrounded; null where there is no one market.</summary>
    public decimal? UnpricedLots => Month is { } month ? PriceTerms.LotsOf(month.Market, ToFix) : null;

    public Weight ToCome => Sum(part => part.ToCome);

    public Weight InStock => Sum(part => part.InStock);

    /// <summary>What the unpriced lots cost more when the market rises by one US cent a pound, in either market.</summary>
    public Money PerCent => OneCent * ToFix;

    private Weight Sum(Func<PositionPart, Weight> of) => Parts.Aggregate(Weight.Zero, (sum, part) => sum + of(part));
}

/// <summary>The share of one contract in a month.</summary>
/// <param name="ContractId">Null for stock that no contract brought.</param>
/// <param name="Contracted">Of the contract's net weight; zero once it is closed.</param>
/// <param name="ToFix">Of <paramref name="Unpriced"/>, in the lots that were agreed.</param>
public sealed record PositionPart(
    FuturesMonth? Month, Id<Contract>? ContractId, string Ref, string Seller, Weight Contracted, Weight Unpriced, Weight ToFix, Weight ToCome, Weight InStock)
{
    public Weight Priced => Contracted - Unpriced;

    internal bool IsNothing => Contracted == Weight.Zero && ToCome == Weight.Zero && InStock == Weight.Zero;

    /// <summary>A contract's weights, split over its months as its fixings and what is open stand, by the largest remainder.</summary>
    internal static IEnumerable<PositionPart> Of(HeldContract held)
    {
        var (contract, position) = (held.Contract, held.Contract.Position);
        var contracted = contract.IsOpen ? contract.NetWeight : Weight.Zero;
        if (position is null)
        {
            return [new PositionPart(null, contract.Id, contract.Ref, contract.Terms.Seller, contracted, Weight.Zero, Weight.Zero, held.ToCome, held.InStock)];
        }

        var shares = position.Parts.GroupBy(part => part.Month)
            .Select(month => (Month: month.Key, Weight: month.Aggregate(Weight.Zero, (sum, part) => sum + part.Weight), IsFixed: true))
            .Append((position.Month, Weight: position.Open, IsFixed: false))
            .Where(share => share.Weight > Weight.Zero).ToList();
        IReadOnlyList<Weight> Split(Weight whole) => [.. LargestRemainder.Split(whole.Micrograms, [.. shares.Select(share => share.Weight.Kilograms)]).Select(part => new Weight(part))];
        var (net, toCome, inStock) = (Split(contracted), Split(held.ToCome), Split(held.InStock));
        return shares.Select((share, at) => new PositionPart(
            share.Month, contract.Id, contract.Ref, contract.Terms.Seller, net[at], share.IsFixed ? Weight.Zero : net[at], share.IsFixed || !contract.IsOpen ? Weight.Zero : share.Weight, toCome[at], inStock[at]))
            .GroupBy(part => part.Month)
            .Select(month => month.Aggregate((sum, part) => sum with
            {
                Contracted = sum.Contracted + part.Contracted,
                Unpriced = sum.Unpriced + part.Unpriced,
                ToFix = sum.ToFix + part.ToFix,
                ToCome = sum.ToCome + part.ToCome,
                InStock = sum.InStock + part.InStock,
            }));
    }
}

/// <summary>What a move of the market does to a month.</summary>
/// <param name="Change">As the market quotes.</param>
/// <param name="Held">Still to come and in stock.</param>
/// <param name="Quote">The last quote with its day; null where none is known, which changes nothing in the differences.</param>
/// <param name="Unpriced">What the unpriced lots would cost more, below zero for less.</param>
/// <param name="Replacement">What it would cost more to buy again what is still to come and in stock.</param>
public sealed record MarketMove(string Name, FuturesMonth Month, decimal Change, Weight Held, FuturesQuote? Quote, Money Unpriced, Money Replacement)
{
    public decimal? Level => Quote?.Quoted;

    public decimal? Then => Level + Change;

    internal static MarketMove Of(PositionRow row, decimal change, FuturesQuote? quote)
    {
        var level = quote?.Quoted;
        var month = row.Month!.Value;
        Rule.Require(level is null || level + change > 0m, $"{month} stands at {level:0.##} {month.Market.QuoteUnit()}: it cannot fall by {-change:0.##}.", month.Market.Root());
        var step = month.Market.Price(change);
        return new MarketMove(row.Name, month, change, row.Held, quote, step * row.ToFix, step * row.Held);
    }
}
