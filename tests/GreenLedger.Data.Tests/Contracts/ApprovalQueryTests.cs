using GreenLedger.Data.Contracts;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Roasting;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using GreenLedger.Examples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Contracts;

public sealed class ApprovalQueryTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 24, 12, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Today = new(2026, 11, 24);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_pre_shipment_sample_waits_beside_the_offer_sample_of_its_lot(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var id = await FillAsync(ledger);
        await using var db = ledger.Open();
        var contract = await db.Contracts.AsNoTracking().Whole().SingleAsync(one => one.Id == id, Stop);

        var waiting = Assert.Single(await new ApprovalQuery(db).ToJudgeAsync(contract, Seal.None, Stop));

        Assert.Equal(("PSS1", 84.00m), (waiting.Sample.Sample.LabelCode, waiting.Offer!.Cup!.Result.Fitted.Points)); // the example's score of lot C
        Assert.Equal((11.2m, 0m), (waiting.Sample.Grade!.Moisture!.Value.Points, waiting.Sample.Grade.Category1!.Value.Count)); // as stored below
        Assert.Equal((300m - 120m, 140m), (waiting.Kept!.Left.Grams, waiting.Sample.Left.Grams)); // as stored below
    }

    [Theory, EveryEngine]
    public async Task What_was_weighed_comes_back_with_who_and_why(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using var db = ledger.Open();

        var sample = await db.Samples.SingleAsync(one => one.LabelCode == "PSS1", Stop);

        Assert.Equal((140m, "Shared with the roastery.", Noon), (sample.Left!.Value.Grams, sample.LeftBecause, sample.LeftAt));
        Assert.Equal(140m, (await db.LeftOfAsync([sample], Stop))[sample.Id].Grams);
    }

    private static async Task<Id<Contract>> FillAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var buyer = new Person("Marthe Vlier", Role.Buyer);
        await LedgerDatabase.PrepareAsync(db, Stop);
        db.Add(buyer);
        await db.SaveChangesAsync(Stop);
        var market = await OpenMarket.StoreAsync(db, Currency.Usd, Noon, Stop);
        var lot = market.LotOf("C");
        var offered = await db.Samples.SingleAsync(sample => sample.LotId == lot.Id, Stop);
        var sent = new Sample(lot.Id, SampleKind.PreShipment, "PSS1", Today, Weight.FromGrams(500m));
        sent.WeighLeft(Weight.FromGrams(140m), "Shared with the roastery.", buyer.Id, Noon);
        db.AddRange(
            sent,
            new SampleRoast(offered, Noon, buyer.Id, null).Weigh(Weight.FromGrams(120m), null),
            new GreenGrade(sent.Id, lot.Id, Today, buyer.Id, GreenGrade.UsualSample).Measure(Percent.Of(11.2m), null, null, null).StateDefects(FullDefects.Of(0m), null));
        var contract = Contract.Draft("P26-001", lot.SupplierId!.Value, Terms(lot), new Dictionary<Id<Lot>, Id<Decision>>(), buyer.Id, Noon);
        contract.Sign(Today, null, buyer.Id, Noon);
        db.Add(contract);
        await db.SaveChangesAsync(Stop);
        return contract.Id;
    }

    private static ContractTerms Terms(Lot lot) => new(
        "Sorrel Roasters",
        "Ribeirão Trading",
        [new ContractedLot(lot.Id, lot.Ref, lot.Name, null, 35, Weight.FromKilograms(60m))],
        new QualityTerms("Washed arabica", Score.Of(84m)),
        PriceTerms.AtPrice(PricePerWeight.FromCentsPerPound(321.65m)),
        new DeliveryTerms(Incoterm.Fob, "Santos", Today, Today.AddDays(60)),
        new WeightTerms(WeightBasis.Shipped, Percent.Of(0.5m), Percent.Of(3m)),
        new ApprovalTerms(ApprovalRule.Replace, 3, null),
        "Net cash against documents",
        [],
        new FormTerms("ESCC, 2018, amended January 2021", "London", 21, 28, 45),
        null);
}
