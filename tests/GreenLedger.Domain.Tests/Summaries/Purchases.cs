using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Domain.Tests.Summaries;

/// <summary>Purchases that the tests know; a test changes what it is about.</summary>
internal static class Purchases
{
    public static readonly DateOnly Today = new(2026, 11, 25);
    public static readonly Period Year = Period.YearOf(Today);

    public static Valuation Valuation { get; } = new(Currency.Eur, Today, new ExchangeRates([]), new FuturesQuotes([]));

    public static PurchasedLot Lot(
        string origin, decimal kilograms, decimal? money, decimal? score, DateOnly on, string supplier = "Cerro Alto Exports", IReadOnlyList<string>? certificates = null, string? process = "washed", FuturesMonth? open = null)
    {
        var (net, value) = (Weight.FromKilograms(kilograms), money is { } amount ? Money.Of(amount, Currency.Eur) : (Money?)null);
        return new PurchasedLot
        {
            ContractId = Id<Contract>.New(),
            ContractRef = $"P26-{on.DayOfYear:000}",
            Lot = new LotFacts(Id<Lot>.New(), "L", "Lot", supplier, origin, process, certificates ?? [], score is { } points ? Score.Of(points) : null),
            Goods = GoodsState.ReadyToShip,
            ShipUntil = on.AddMonths(3),
            Net = net,
            Unpriced = open is null ? Weight.Zero : net,
            OpenMonth = open,
            Value = value,
            ToCome = net,
            ValueToCome = value,
            Entries = [new PurchaseEntry(PurchaseStep.Contracted, on, net, value)],
        };
    }

    public static PurchaseSummary Summary(IReadOnlyList<PurchasedLot> lots, SummaryWish? wish = null, IReadOnlyList<OfferedLot>? offered = null, Valuation? valuation = null, IReadOnlyList<FuturesQuote>? quotes = null, IReadOnlyList<LotInStock>? stock = null) =>
        PurchaseSummary.Of(new SummaryFacts(valuation ?? Valuation, new QualityBands(), lots, offered ?? [], quotes ?? [], [], stock ?? [], null), wish ?? new SummaryWish(Year, Cut.Origin));
}
