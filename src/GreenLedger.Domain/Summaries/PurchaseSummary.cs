using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Pricing;

namespace GreenLedger.Domain.Summaries;

/// <summary>Everything that a summary is made from, already read.</summary>
/// <param name="Quotes">Closing quotes of both periods.</param>
/// <param name="ToDecide">Of every open contract.</param>
/// <param name="Stock">What lies in the warehouses as it stands.</param>
/// <param name="NewestRate">The day of the newest market rate in the house; null where there is none.</param>
public sealed record SummaryFacts(
    Valuation Valuation,
    QualityBands Bands,
    IReadOnlyList<PurchasedLot> Lots,
    IReadOnlyList<OfferedLot> Offered,
    IReadOnlyList<FuturesQuote> Quotes,
    IReadOnlyList<ToDecide> ToDecide,
    IReadOnlyList<LotInStock> Stock,
    DateOnly? NewestRate);

/// <summary>What a summary is asked for: a period, by what it is parted, and one group of that cut or all.</summary>
public sealed record SummaryWish(Period Period, Cut Cut, string? Group = null);

/// <summary>Which rows stand behind a figure.</summary>
public enum SummaryFigure
{
    Contracted = 0,
    Shipped = 1,
    Arrived = 2,

    /// <summary>Contracted and not arrived, as it stands.</summary>
    ToCome = 3,

    /// <summary>Every open contract's lots, priced or not, as they stand.</summary>
    Open = 4,

    /// <summary>What lies in the warehouses, as it stands, at cost.</summary>
    InStock = 5,

    /// <summary>What arrived, at the cost in the warehouse that was billed for it.</summary>
    Landed = 6,
}

/// <summary>Narrows the rows of a figure; null asks nothing.</summary>
/// <param name="Band">The name of a band of quality.</param>
/// <param name="Score">A whole point: 86 for 86.00 to 86.99.</param>
/// <param name="Month">The first day of a month of shipment.</param>
/// <param name="Futures">What the unpriced part stands against.</param>
/// <param name="IsBefore">The rows of the period before.</param>
public sealed record RowFilter(SummaryFigure Figure, string? Band = null, int? Score = null, DateOnly? Month = null, FuturesMonth? Futures = null, bool IsBefore = false);

/// <summary>
/// What was bought in a period and what is open as it stands. Every figure is the total of <see cref="Rows"/>, which are shown
/// behind it; the groups of a cut add up to the whole, because each lot stands in one group.
/// </summary>
public sealed class PurchaseSummary
{
    public const string NotCupped = "not cupped";
    public const int MostPositions = 10;

    private readonly SummaryFacts _facts;

    private PurchaseSummary(SummaryFacts facts, SummaryWish wish)
    {
        (_facts, Wish) = (facts, wish);
        Lots = [.. facts.Lots.Where(lot => IsAsked(lot.Lot))];
        Stock = [.. facts.Stock.Where(lot => IsAsked(lot.Lot))];
        Offered = [.. facts.Offered.Where(lot => wish.Period.Holds(lot.On) && IsAsked(lot.Lot))];
        Futures = Average(wish.Period);
        FuturesBefore = Average(wish.Period.Before);
        var contracts = Lots.Select(lot => lot.ContractId).ToHashSet();
        ToDecide = [.. facts.ToDecide.Where(one => contracts.Contains(one.ContractId)).OrderBy(one => one.Since).ThenBy(one => one.ContractRef, StringComparer.Ordinal)];
    }

    public SummaryWish Wish { get; }

    public Currency Currency => _facts.Valuation.Currency;

    /// <summary>The day by which what is open is told.</summary>
    public DateOnly AsOf => _facts.Valuation.AsOf;

    public DateOnly? NewestRate => _facts.NewestRate;

    public QualityBands Bands => _facts.Bands;

    /// <summary>Every purchased lot of the group that was asked for.</summary>
    public IReadOnlyList<PurchasedLot> Lots { get; }

    /// <summary>What lies in the warehouses of the group that was asked for.</summary>
    public IReadOnlyList<LotInStock> Stock { get; }

    /// <summary>Nothing bought and nothing in stock.</summary>
    public bool IsEmpty => Lots.Count == 0 && Stock.Count == 0;

    /// <summary>Lots first offered in the period that our panel cupped.</summary>
    public IReadOnlyList<OfferedLot> Offered { get; }

    /// <summary>Of the arabica market, in the period; null without quotes.</summary>
    public FuturesAverage? Futures { get; }

    public FuturesAverage? FuturesBefore { get; }

    public IReadOnlyList<ToDecide> ToDecide { get; }

    public static PurchaseSummary Of(SummaryFacts facts, SummaryWish wish)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(wish);
        return new PurchaseSummary(facts, wish);
    }

    /// <summary>The same facts, asked otherwise within the same period.</summary>
    public PurchaseSummary Of(SummaryWish wish) => Of(_facts, wish);

    /// <summary>The rows behind a figure, the newest first.</summary>
    public IReadOnlyList<SummaryRow> Rows(RowFilter filter)
    {
        ArgumentNullException.ThrowIfNull(filter);
        var period = filter.IsBefore ? Wish.Period.Before : Wish.Period;
        var rows = filter.Figure switch
        {
            SummaryFigure.ToCome => Lots.Where(lot => lot.ToCome > Weight.Zero).Select(lot => SummaryRow.Of(lot, lot.ShipUntil, lot.ToCome, lot.ValueToCome)),
            SummaryFigure.Open => Lots.Where(lot => lot.IsOpen).Select(lot => SummaryRow.Of(lot, lot.ShipUntil, lot.Net, lot.Value)),
            SummaryFigure.InStock => Stock.Select(lot => new SummaryRow(lot.Lot, AsOf, lot.Net, lot.Value, null)),
            SummaryFigure.Landed => Entries(PurchaseStep.Arrived, period).Select(row => row with { Value = LandedOf(row), IsProvisional = false }),
            _ => Entries((PurchaseStep)filter.Figure, period),
        };
        return
        [
            .. rows.Where(row => (filter.Band is null || BandOf(row.Lot) == filter.Band)
                    && (filter.Score is null || PointOf(row.Lot) == filter.Score)
                    && (filter.Month is null || (row.Purchase is { } lot && MonthOf(lot.ShipUntil) == filter.Month))
                    && (filter.Futures is null || row.Purchase?.OpenMonth == filter.Futures))
                .OrderByDescending(row => row.On).ThenBy(row => row.Purchase?.ContractRef, StringComparer.Ordinal).ThenBy(row => row.Lot.Ref, StringComparer.Ordinal),
        ];
    }

    public Total Total(RowFilter filter) => Summaries.Total.Of(Rows(filter), Currency);

    public Total Total(SummaryFigure figure, bool isBefore = false) => Total(new RowFilter(figure, IsBefore: isBefore));

    /// <summary>The groups of the cut, the most money contracted first.</summary>
    public IReadOnlyList<CutGroup> Groups()
    {
        var parts = new[] { SummaryFigure.Contracted, SummaryFigure.Shipped, SummaryFigure.Arrived, SummaryFigure.ToCome, SummaryFigure.InStock }
            .Select(figure => Rows(new RowFilter(figure)).ToLookup(row => Wish.Cut.GroupOf(row.Lot))).ToList();
        return
        [
            .. parts.SelectMany(part => part.Select(group => group.Key)).Distinct()
                .Select(name => new CutGroup(
                    name, Sum(parts[0][name]), Sum(parts[1][name]), Sum(parts[2][name]), Sum(parts[3][name]), Sum(parts[4][name]), MeanScore(parts[0][name])))
                .OrderByDescending(group => group.Contracted.Value.MinorUnits).ThenBy(group => group.Name, StringComparer.Ordinal),
        ];
    }

    /// <summary>Bands in which something was contracted in the period or the one before, the best first.</summary>
    public IReadOnlyList<BandLine> BandLines() =>
    [
        .. BandNames.Select(name =>
        {
            var rows = Rows(new RowFilter(SummaryFigure.Contracted, name));
            return new BandLine(name, Sum(rows), Total(new RowFilter(SummaryFigure.Contracted, name, IsBefore: true)), PerPoint(rows));
        }).Where(line => line.Now.Rows + line.Before.Rows > 0),
    ];

    /// <summary>Bands of which something arrived in the period or the one before, the best first, at what it truly cost.</summary>
    public IReadOnlyList<LandedLine> LandedLines() =>
    [
        .. BandNames.Select(name => new LandedLine(name, Total(new RowFilter(SummaryFigure.Landed, name)), Total(new RowFilter(SummaryFigure.Landed, name, IsBefore: true))))
            .Where(line => line.Now.Rows + line.Before.Rows > 0),
    ];

    /// <summary>Whole points with a lot offered or bought in the period, the highest first.</summary>
    public IReadOnlyList<ScoreLine> ScoreLines()
    {
        var offered = Offered.ToLookup(lot => PointOf(lot.Lot));
        var bought = Rows(new RowFilter(SummaryFigure.Contracted)).ToLookup(row => PointOf(row.Lot));
        return
        [
            .. offered.Select(point => point.Key).Union(bought.Select(point => point.Key)).OfType<int>().OrderDescending()
                .Select(point => new ScoreLine(point, offered[point].Count(), bought[point].Count(), Sum(bought[point]).Net)),
        ];
    }

    /// <summary>Open contracts by month of shipment, the nearest first.</summary>
    public IReadOnlyList<PricedMonth> PricedMonths() =>
    [
        .. Rows(new RowFilter(SummaryFigure.Open)).GroupBy(row => MonthOf(row.Purchase!.ShipUntil)).OrderBy(month => month.Key)
            .Select(month => new PricedMonth(month.Key, month.Count(), Sum(month, row => row.Purchase!.Priced), Sum(month, row => row.Purchase!.Unpriced))),
    ];

    public IReadOnlyList<UnpricedMonth> UnpricedMonths() =>
    [
        .. Rows(new RowFilter(SummaryFigure.Open)).Where(row => row.Purchase!.OpenMonth is not null).GroupBy(row => row.Purchase!.OpenMonth!.Value).OrderBy(month => month.Key)
            .Select(month => new UnpricedMonth(month.Key, month.Count(), Sum(month, row => row.Purchase!.Unpriced))),
    ];

    /// <summary>The largest by value of what is still to come.</summary>
    public IReadOnlyList<SummaryRow> Positions() =>
        [.. Rows(new RowFilter(SummaryFigure.ToCome)).OrderByDescending(row => row.Value?.MinorUnits ?? 0).ThenBy(row => row.Purchase?.ContractRef, StringComparer.Ordinal).Take(MostPositions)];

    /// <summary>Lots with a verdict in the period, by their last verdict in it, the newest first.</summary>
    public IReadOnlyList<(PurchasedLot Purchase, Judged Judged)> Judgements() =>
    [
        .. Lots.Select(lot => (lot, Last: lot.Judgements.Where(one => Wish.Period.Holds(one.On)).MaxBy(one => one.Round)))
            .Where(one => one.Last is not null).Select(one => (one.lot, one.Last!)).OrderByDescending(one => one.Item2.On).ThenBy(one => one.lot.ContractRef, StringComparer.Ordinal),
    ];

    public ApprovalCounts Approvals()
    {
        var judged = Judgements();
        return new ApprovalCounts(
            judged.Count(one => one.Judged is { Round: 1, Verdict: not Contracts.ApprovalVerdict.Refused }),
            judged.Count(one => one.Judged is { Round: > 1, Verdict: not Contracts.ApprovalVerdict.Refused }),
            judged.Count(one => one.Judged.Verdict == Contracts.ApprovalVerdict.Refused));
    }

    /// <summary>Arrivals received in the period, the newest first.</summary>
    public IReadOnlyList<(PurchasedLot Purchase, Compared Compared)> Comparisons() =>
        [.. Lots.SelectMany(lot => lot.Comparisons.Where(one => Wish.Period.Holds(one.On)).Select(one => (lot, one))).OrderByDescending(one => one.one.On).ThenBy(one => one.lot.ContractRef, StringComparer.Ordinal)];

    /// <summary>Claims made in the period, and older ones that are still open; the newest first.</summary>
    public IReadOnlyList<(PurchasedLot Purchase, Claimed Claim)> Claims() =>
    [
        .. Lots.SelectMany(lot => lot.Claims.Where(claim => Wish.Period.Holds(claim.On) || (claim.IsOpen && claim.On < Wish.Period.From)).Select(claim => (lot, claim)))
            .OrderByDescending(one => one.claim.On).ThenBy(one => one.claim.Ref, StringComparer.Ordinal),
    ];

    public string BandOf(LotFacts lot)
    {
        ArgumentNullException.ThrowIfNull(lot);
        return lot.Score is { } score ? Bands.BandOf(score) : NotCupped;
    }

    /// <summary>The whole point below the score: 86 for 86.99; null where the lot was not cupped.</summary>
    public static int? PointOf(LotFacts lot)
    {
        ArgumentNullException.ThrowIfNull(lot);
        return lot.Score is { } score ? decimal.ToInt32(decimal.Floor(score.Points)) : null;
    }

    /// <summary>Weighted by kilograms, of the rows that were cupped.</summary>
    public static decimal? MeanScore(IEnumerable<SummaryRow> rows)
    {
        var cupped = rows.Where(row => row.Lot.Score is not null).ToList();
        var weight = cupped.Sum(row => row.Net.Kilograms);
        return weight > 0m ? cupped.Sum(row => row.Net.Kilograms * row.Lot.Score!.Value.Points) / weight : null;
    }

    private IEnumerable<string> BandNames => Bands.Bands.Select(band => band.Name).Append(NotCupped);

    private Money? LandedOf(SummaryRow row) => row.Lot.LandedPerKilogram is { } cost ? Money.Of(cost * row.Net.Kilograms, Currency) : null;

    private IEnumerable<SummaryRow> Entries(PurchaseStep step, Period period) =>
        Lots.SelectMany(lot => lot.Entries.Where(entry => entry.Step == step && period.Holds(entry.On)).Select(entry => SummaryRow.Of(lot, entry.On, entry.Net, entry.Value)));

    private bool IsAsked(LotFacts lot) => Wish.Group is null || Wish.Cut.GroupOf(lot) == Wish.Group;

    private Total Sum(IEnumerable<SummaryRow> rows) => Summaries.Total.Of(rows, Currency);

    private static Weight Sum(IEnumerable<SummaryRow> rows, Func<SummaryRow, Weight> part) => rows.Aggregate(Weight.Zero, (sum, row) => sum + part(row));

    private static decimal? PerPoint(IReadOnlyList<SummaryRow> rows)
    {
        var cupped = rows.Where(row => row is { Value: not null, Lot.Score: { Points: > 0m } }).ToList();
        var points = cupped.Sum(row => row.Net.Kilograms * row.Lot.Score!.Value.Points);
        return points > 0m ? cupped.Sum(row => row.Value!.Value.Amount) / points : null;
    }

    private static DateOnly MonthOf(DateOnly day) => new(day.Year, day.Month, 1);

    private FuturesAverage? Average(Period period) =>
        FuturesAverage.Of(FuturesMarket.Arabica, period, _facts.Quotes, _facts.Valuation.Rates, Currency);
}
