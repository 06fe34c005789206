using System.Text;
using System.Text.RegularExpressions;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Summaries;

namespace GreenLedger.Benchmarks.Summaries;

/// <summary>A purchase summary of so many suppliers that its PDF has twenty pages: worked out, and printed.</summary>
internal static partial class SummaryBenchmark
{
    private const int Pages = 20;

    private static readonly DateOnly Today = new(2026, 11, 26);

    public static async Task<Dictionary<string, double>> RunAsync()
    {
        var suppliers = 100;
        while (PagesOf(Written(suppliers)) < Pages)
        {
            suppliers += 10;
        }

        var runs = new List<double>();
        for (var run = 0; run <= Sizes.Repeats; run++)
        {
            var (seconds, _) = await Timing.OfAsync(() => Task.FromResult(Written(suppliers)));
            runs.Add(seconds);
        }

        return new() { ["seconds"] = Timing.Median(runs.Skip(1)), ["pages"] = PagesOf(Written(suppliers)), ["lots"] = suppliers * 2 };
    }

    private static byte[] Written(int suppliers)
    {
        var lots = Enumerable.Range(0, suppliers * 2).Select(number => LotOf(number, $"Supplier {number % suppliers:000}")).ToList();
        var facts = new SummaryFacts(new Valuation(Currency.Eur, Today, new ExchangeRates([]), new FuturesQuotes([])), new QualityBands(), lots, [], [], [], [], null);
        var summary = PurchaseSummary.Of(facts, new SummaryWish(Period.YearOf(Today), Cut.Supplier));
        using var stream = new MemoryStream();
        SummaryPdf.Write(new SummaryReport("Bench house", "A buyer", new DateTimeOffset(2026, 11, 26, 9, 0, 0, TimeSpan.Zero), ClockZone.Utc, summary), stream);
        return stream.ToArray();
    }

    private static PurchasedLot LotOf(int number, string supplier)
    {
        var (on, net, value) = (Today.AddDays(-(number % 300) - 1), Weight.FromKilograms(600 + (number % 40) * 60), Money.Of(4_000 + (number % 97) * 31, Currency.Eur));
        return new PurchasedLot
        {
            ContractId = Id<Contract>.New(),
            ContractRef = $"P26-{number:000}",
            Lot = new LotFacts(Id<Lot>.New(), $"L-{number}", $"Quay lot {number}", supplier, $"Origin {number % 12}", "washed", [], Score.Of(80 + number % 10)),
            Goods = GoodsState.ReadyToShip,
            ShipUntil = on.AddMonths(4),
            Net = net,
            Unpriced = Weight.Zero,
            OpenMonth = null,
            Value = value,
            ToCome = net,
            ValueToCome = value,
            Entries = [new PurchaseEntry(PurchaseStep.Contracted, on, net, value)],
        };
    }

    private static int PagesOf(byte[] pdf) => PageObject().Count(Encoding.Latin1.GetString(pdf));

    [GeneratedRegex(@"/Type\s*/Page\b(?!s)")]
    private static partial Regex PageObject();
}
