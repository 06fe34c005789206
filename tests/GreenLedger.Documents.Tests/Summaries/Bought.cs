using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Documents.Tests.Summaries;

/// <summary>A summary that the tests know: three lots bought this year and one the year before.</summary>
internal static class Bought
{
    public static readonly DateOnly Today = new(2026, 11, 25);

    /// <summary>Worked by hand: 24,690 kg for 170,160.00 EUR; Brazil 19,200 kg, 119,040.00 EUR; Kenya 5,490 kg, 51,120.00 EUR.</summary>
    public static IReadOnlyList<PurchasedLot> Lots { get; } =
    [
        Lot("Brazil", 19_200m, 119_040m, 82m, new DateOnly(2026, 3, 2), "Cooperativa do Planalto"),
        Lot("Kenya", 4_800m, 45_120m, 87m, new DateOnly(2026, 5, 4), "Kilele Coffee", FuturesMonth.Of(FuturesMarket.Arabica, 2027, 3)),
        Lot("Kenya", 690m, 6_000m, 86.5m, new DateOnly(2026, 6, 1), "Kilele Coffee"),
        Lot("Peru", 3_450m, 20_700m, 84m, new DateOnly(2025, 7, 1), "Cerro Alto Exports"),
    ];

    public static PurchasedLot Lot(string origin, decimal kilograms, decimal money, decimal score, DateOnly on, string supplier, FuturesMonth? open = null)
    {
        var (net, value) = (Weight.FromKilograms(kilograms), Money.Of(money, Currency.Eur));
        return new PurchasedLot
        {
            ContractId = Id<Contract>.New(),
            ContractRef = $"P{on.Year % 100}-{on.DayOfYear:000}",
            Lot = new LotFacts(Id<Lot>.New(), "L-" + on.DayOfYear, origin + " lot", supplier, origin, "washed", [], Score.Of(score)),
            Goods = GoodsState.ReadyToShip,
            ShipUntil = on.AddMonths(4),
            Net = net,
            Unpriced = open is null ? Weight.Zero : net,
            OpenMonth = open,
            Value = value,
            ToCome = net,
            ValueToCome = value,
            Entries = [new PurchaseEntry(PurchaseStep.Contracted, on, net, value)],
        };
    }

    /// <summary>Two lots in the warehouse, one of them without a bill.</summary>
    private static IReadOnlyList<LotInStock> Stock { get; } =
    [
        new(new LotFacts(Id<Lot>.New(), "L-9", "Kenya lot", "Kilele Coffee", "Kenya", "washed", [], Score.Of(88.25m)), Weight.FromKilograms(1_437.5m), Money.Of(9_415.63m, Currency.Eur)),
        new(new LotFacts(Id<Lot>.New(), "L-8", "Peru lot", "Cerro Alto Exports", "Peru", "washed", [], Score.Of(83m)), Weight.FromKilograms(690m), null),
    ];

    public static SummaryReport Report(IReadOnlyList<PurchasedLot>? lots = null, Cut cut = Cut.Origin) => new(
        "Harbour & Hill Roasters", "Ana Ruiz", new DateTimeOffset(2026, 11, 25, 9, 30, 0, TimeSpan.Zero), ClockZone.Utc,
        PurchaseSummary.Of(
            new SummaryFacts(new Valuation(Currency.Eur, Today, new ExchangeRates([]), new FuturesQuotes([])), new QualityBands(), lots ?? Lots, [], [], [], Stock, null),
            new SummaryWish(Period.YearOf(Today), cut)));
}
