using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Tests.Contracts;

/// <summary>Contracts that the tests know: example A of the handbook (trade 2.3), 1,250 bags of 69 kg at KCK27 +35.00.</summary>
internal static class ContractDemo
{
    public static readonly FuturesMonth May = FuturesMonth.Of(FuturesMarket.Arabica, 2027, 5);
    public static readonly FuturesMonth July = FuturesMonth.Of(FuturesMarket.Arabica, 2027, 7);
    public static readonly DateOnly Today = new(2026, 11, 25);
    public static readonly DateTimeOffset Now = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);
    public static readonly Id<Person> Buyer = Id<Person>.New();
    public static readonly Id<Lot> Lot = Id<Lot>.New();

    public static PriceTerms ToBeFixed(int? lots = 5, decimal differential = 35.00m, Percent? share = null) =>
        new(null, May, differential, lots, Caller.Buyer, null, share);

    public static PriceTerms Outright => PriceTerms.AtPrice(PricePerWeight.FromCentsPerPound(321.65m));

    public static ContractTerms Terms(PriceTerms? price = null, ApprovalTerms? approval = null, int bags = 1250, decimal bagKg = 69m) => new(
        "Sorrel Roasters",
        "Cerro Alto Exports",
        [new ContractedLot(Lot, "CA-17", "Cerro Alto washed", "2026/27", bags, Weight.FromKilograms(bagKg))],
        new QualityTerms("Washed arabica, screen 16 and above", Score.Of(84m)),
        price ?? ToBeFixed(),
        new DeliveryTerms(Incoterm.Fob, "Cartagena", new DateOnly(2027, 2, 1), new DateOnly(2027, 3, 31)),
        new WeightTerms(WeightBasis.Shipped, Percent.Of(0.5m), Percent.Of(3m)),
        approval ?? new ApprovalTerms(ApprovalRule.None, null, null),
        "Net cash against documents on first presentation",
        [],
        new FormTerms("ESCC, 2018, amended January 2021", "London", 21, 28, 45),
        null);

    public static Contract Draft(PriceTerms? price = null, ApprovalTerms? approval = null, int bags = 1250) =>
        Contract.Draft("P26-001", Id<Supplier>.New(), Terms(price, approval, bags), new Dictionary<Id<Lot>, Id<Decision>>(), Buyer, Now);

    public static Contract Signed(PriceTerms? price = null, ApprovalTerms? approval = null, int bags = 1250)
    {
        var contract = Draft(price, approval, bags);
        contract.Sign(Today, null, Buyer, Now);
        return contract;
    }

    public static void Fix(this Contract contract, int lots, decimal level) =>
        contract.Fix(new FixingOrder(Today, lots, null, level, null), Buyer, Now);

    public static string Refusal(Action act) => Assert.Throws<RuleBrokenException>(act).Message;
}
