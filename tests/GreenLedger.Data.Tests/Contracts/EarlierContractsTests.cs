using GreenLedger.Data.Contracts;
using GreenLedger.Data.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Offers.Reading;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Stock.Reading;
using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Contracts;

/// <summary>Earlier contracts as both databases keep them, and what position, purchases and records say of them.</summary>
public sealed class EarlierContractsTests(Ledgers ledgers)
{
    private const string Past = "P24-7|Sierra Clara|2026-02-14|SC-9|Peru|275|69||8 EUR/kg|||||86.25|18941.3|10.12|2026-05-11";

    private static readonly DateTimeOffset Now = new(2026, 11, 26, 12, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Today = new(2026, 11, 26);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task The_open_lots_of_a_differential_contract_stand_in_the_position(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await TakeAsync(ledger, "P25-1|Serra do Mel|2026-08-03|SM-1|Brazil|640|59|2026-12-31||KCH27|12|1|281.40||||");
        await using var db = ledger.Open();

        var row = Assert.Single((await new MarketPositionQuery(db).FindAsync(Stop)).Rows);

        // One of the two lots that 37,760 kg make is fixed (2.22, common practice: the nearest): half of the weight is unpriced, one lot of 37,500 lb is to fix.
        Assert.Equal(("KCH27", Weight.FromKilograms(37_760m), Weight.FromKilograms(18_880m), Weight.FromPounds(37_500m)), (row.Month.ToString(), row.Contracted, row.Unpriced, row.ToFix));
    }

    [Theory, EveryEngine]
    public async Task A_past_purchase_counts_in_the_summary_as_from_before_and_in_no_figure_of_the_record(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var seller = await TakeAsync(ledger, Past);
        await using var db = ledger.Open();

        var summary = (await new PurchaseSummaryQuery(db, new FixingsQuery(db)).FindAsync(new SummaryWish(Period.Of(new DateOnly(2026, 1, 1), new DateOnly(2026, 12, 31)), Cut.Supplier), Today, Stop))!;
        var record = SupplierRecord.Of((await new SupplierRecordQuery(db).FactsAsync(Stop)).Where(source => source.Supplier == seller));

        // Worked by hand: 275 × 69 kg at 8 EUR contracted; 18,941.3 kg received, landed at 10.12 EUR: 191,685.956 EUR.
        Assert.Equal((Weight.FromKilograms(18_975m), Money.Of(151_800m, Currency.Eur)), (summary.Total(SummaryFigure.Contracted).Net, summary.Total(SummaryFigure.Contracted).Value));
        Assert.Equal((Weight.FromKilograms(18_941.3m), Money.Of(191_685.96m, Currency.Eur)), (summary.Total(SummaryFigure.Landed).Net, summary.Total(SummaryFigure.Landed).Value));
        Assert.Equal(("Sierra Clara", Weight.Zero), (Assert.Single(summary.Groups()).Name, summary.Total(SummaryFigure.ToCome).Net));
        Assert.True(Assert.Single(summary.Lots).IsEarlier);
        Assert.Equal((1, Weight.FromKilograms(18_941.3m)), (record.LotsBefore, record.ReceivedBefore));
        Assert.Equal((0, 0, 0), (record.InTime.Of, record.Weight.Number, record.Bought.Of));
    }

    [Theory, EveryEngine]
    public async Task What_was_known_of_a_lot_then_comes_back_as_it_was_written(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await TakeAsync(ledger, Past);
        await using var db = ledger.Open();

        var contract = await db.Contracts.Whole().SingleAsync(Stop);
        var lot = Assert.Single(contract.Lots);

        Assert.Equal((true, GoodsState.Closed), (contract.IsEarlier, contract.Goods));
        Assert.Equal((new DateOnly(2026, 5, 11), Weight.FromKilograms(18_941.3m), PricePerWeight.Of(10.12m, Currency.Eur, PriceUnit.Kilogram), Score.Of(86.25m)), (lot.ReceivedOn, lot.Received, lot.LandedCost, lot.EarlierScore));
    }

    /// <summary>Stores what a row says, in a house of its own, and gives the seller.</summary>
    private static async Task<Id<Supplier>> TakeAsync(Ledger ledger, string row)
    {
        const string heading = "Contract|Supplier|Contract date|Lot|Origin|Bags|Bag weight (kg)|Shipment until|Price|Futures month|Differential|Lots fixed|Fixed at|Score|Received (kg)|Landed cost per kg|Arrived on";
        Country[] countries = [new("PE", "Peru"), new("BR", "Brazil")];
        var person = new Person("Ada", Role.Buyer);
        var facts = new EarlierCase(
            "Harbour Roastery", Currency.Eur, null, new ListReference(countries, [], new ListChecks(), Today),
            new KnownNames(new Dictionary<string, KnownSample>(), new Dictionary<string, string>()), new Dictionary<Id<Lot>, Lot>(), [], [], new HashSet<string>(), new HashSet<Id<Lot>>(),
            new ExchangeRates([]), new EarlierDefaults(null, Today, Incoterm.Fob), () => "S26-001", person.Id, Now);
        var lines = new[] { heading, row }.Select((line, at) => new OfferLine(at + 1, [.. line.Split('|').Select(Cell.Of)])).ToList();
        var taking = EarlierTaking.Of(EarlierList.Of(lines, Currency.Eur, Today), facts);
        var file = new StoredFile("contracts.csv", "text/csv", [1], person.Id, Now);
        await using var db = ledger.Open();
        db.AddRange(person, file, new House("Harbour Roastery", Currency.Eur));
        db.AddRange(countries);
        db.AddRange(taking.NewSuppliers);
        db.AddRange(taking.NewLots);
        var contract = Assert.Single(taking.Contracts).Contract;
        contract.ComeFrom(file);
        db.Add(contract);
        await db.SaveChangesAsync(Stop);
        return contract.SupplierId;
    }
}
