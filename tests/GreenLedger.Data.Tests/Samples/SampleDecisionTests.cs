using GreenLedger.Data.Contracts;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Samples;
using GreenLedger.Data.Tests.Arrivals;
using GreenLedger.Data.Tests.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Samples;

/// <summary>What decides a sample of each kind: its approval, its comparison, or the decision on its lot (issue, Samples; trade 4.3).</summary>
public sealed class SampleDecisionTests(Ledgers ledgers)
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly DateTimeOffset Noon = new(2026, 11, 20, 12, 0, 0, TimeSpan.Zero);
    private static readonly Person Lead = new("Joost Ravelaar", Role.LeadCupper);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_pre_shipment_sample_is_decided_by_its_refusal_and_waits_no_more(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        Id<Contract> contractId;
        await using (var db = ledger.Open())
        {
            var (contract, samples) = Waiting(db, "REFUSED", "SECOND");
            contract.Judge(samples[0], ApprovalVerdict.Refused, "Past crop notes.", new DateOnly(2026, 11, 21), Lead.Id, Noon);
            contractId = contract.Id;
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var way = await WayAsync(read, "REFUSED");

        Assert.Equal((DecidedBy.Approval, contractId.Value, "refused"), (way.Decided!.Kind, way.Decided.Record, way.Decided.Word));
        Assert.Equal((StepState.Done, new DateOnly(2026, 11, 21), Lead.Name), (way.Stops[^1].State, way.Stops[^1].Taken!.On, way.Stops[^1].Taken!.By));
        Assert.Equal(["REFUSED"], await StandAsync(read, SampleStep.Decided));
        Assert.Equal(["SECOND"], await LateAsync(read));
    }

    [Theory, EveryEngine]
    public async Task Another_sample_approved_after_it_came_ends_its_waiting_without_deciding_it(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            var (contract, samples) = Waiting(db, "APPROVED", "SPARE");
            contract.Judge(samples[0], ApprovalVerdict.Approved, null, new DateOnly(2026, 11, 21), Lead.Id, Noon);
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();

        Assert.Equal(["APPROVED"], await StandAsync(read, SampleStep.Decided));
        Assert.Equal(["SPARE"], await StandAsync(read, SampleStep.Received));
        Assert.Empty(await LateAsync(read));
        Assert.Null((await WayAsync(read, "SPARE")).Decided);
    }

    /// <summary>Both lots ask for approval; what is on board without it stays a breach (trade 4.4), and the sample has nobody to wait for.</summary>
    [Theory, EveryEngine]
    public async Task A_pre_shipment_sample_waits_no_more_when_its_contract_shipped_or_ended_without_judging_it(Engine engine)
    {
        foreach (var (move, what) in new[] { (GoodsMove.Ship, "shipped without approval"), (GoodsMove.Cancel, "cancelled") })
        {
            await using var ledger = await ledgers.NewAsync(engine);
            await using (var db = ledger.Open())
            {
                Waiting(db, "FORGOTTEN");
                await db.SaveChangesAsync(Stop);
            }

            await using (var db = ledger.Open())
            {
                Assert.Equal(["FORGOTTEN"], await LateAsync(db));
                Assert.Null((await WayAsync(db, "FORGOTTEN")).Unjudged);
                var contract = await db.Contracts.Whole().SingleAsync(Stop);
                contract.Enter(move, new DateOnly(2026, 11, 18), "Nobody asked us.", Lead.Id, Noon);
                await db.SaveChangesAsync(Stop);
            }

            await using var read = ledger.Open();
            var way = await WayAsync(read, "FORGOTTEN");

            Assert.Empty(await LateAsync(read));
            Assert.Equal(new SampleUnjudged(await read.Contracts.Select(one => one.Id).SingleAsync(Stop), what, new DateOnly(2026, 11, 18)), way.Unjudged);
            Assert.Equal((null, StepState.Ahead), (way.Decided, way.Stops[^1].State));
            Assert.DoesNotContain(way.Stops, stop => stop.WaitingDays is not null);
        }
    }

    /// <summary>It shipped, and by the day on which it arrived it had still not been judged: the day of shipping is the one that counts.</summary>
    [Theory, EveryEngine]
    public async Task Goods_that_arrived_are_told_by_the_day_they_shipped_and_an_open_contract_keeps_a_sample_waiting(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            var (contract, _) = Waiting(db, "FORGOTTEN");
            contract.Ship(new DateOnly(2026, 11, 12), "Nobody asked us.", Lead.Id, Noon);
            contract.Arrive(new DateOnly(2026, 11, 19), null, Lead.Id, Noon);
            await db.SaveChangesAsync(Stop);
        }

        await using (var read = ledger.Open())
        {
            Assert.Equal(("shipped without approval", new DateOnly(2026, 11, 12)), ((await WayAsync(read, "FORGOTTEN")).Unjudged!.What, (await WayAsync(read, "FORGOTTEN")).Unjudged!.On));
            var lot = await read.Lots.SingleAsync(Stop);
            read.Add(Contract.Draft("P26-002", lot.SupplierId!.Value, ArrivalCaseQueryTests.Terms(lot), new Dictionary<Id<Lot>, Id<Decision>>(), Lead.Id, Noon));
            await read.SaveChangesAsync(Stop);
        }

        await using var again = ledger.Open();

        Assert.Null((await WayAsync(again, "FORGOTTEN")).Unjudged);
        Assert.Equal(["FORGOTTEN"], await LateAsync(again));
    }

    [Theory, EveryEngine]
    public async Task An_arrival_sample_is_decided_by_its_comparison_with_the_approved_one(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var arrival = await ArrivalCaseQueryTests.FillAsync(ledger);
        await using (var db = ledger.Open())
        {
            var lot = await db.Lots.SingleAsync(Stop);
            db.Add(new Sample(lot.Id, SampleKind.Arrival, "ALONE", Today.AddDays(-10), Weight.FromGrams(350m)));
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        var way = await WayAsync(read, "AR1");

        // Ledger of ArrivalCaseQueryTests: 1.75 points below the approved sample, closed by Joost Ravelaar on 24 November.
        Assert.Equal((DecidedBy.Comparison, arrival.Value, "short of the approved one"), (way.Decided!.Kind, way.Decided.Record, way.Decided.Word));
        Assert.Equal((new DateOnly(2026, 11, 24), "Joost Ravelaar"), (way.Stops[^1].Taken!.On, way.Stops[^1].Taken!.By));
        Assert.Equal(["AR1"], await StandAsync(read, SampleStep.Decided));
        Assert.Equal(["PS1"], await StandAsync(read, SampleStep.Cupped));
        Assert.Equal(["ALONE", "PS1"], await LateAsync(read));
    }

    [Theory, EveryEngine]
    public async Task A_decision_on_the_lot_decides_an_offer_sample_and_neither_a_pre_shipment_nor_an_arrival_sample(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await DecideAsync(ledger, new DateOnly(2026, 11, 20), ClockZone.Utc, new DateTimeOffset(2026, 11, 24, 9, 0, 0, TimeSpan.Zero), SampleKind.Type, SampleKind.PreShipment, SampleKind.Arrival);

        await using var read = ledger.Open();
        var way = await WayAsync(read, "TYPE");

        Assert.Contains("TYPE", await StandAsync(read, SampleStep.Decided));
        Assert.Equal(["ARRIVAL", "PRESHIPMENT"], await StandAsync(read, SampleStep.Received));
        Assert.Equal((DecidedBy.Decision, "decline", "Ilse Brandt"), (way.Decided!.Kind, way.Decided.Word, way.Stops[^1].Taken!.By));
    }

    [Theory, EveryEngine]
    public async Task A_stock_sample_has_come_to_its_end_when_it_is_cupped(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            Offered(db, SampleKind.Stock, SampleKind.Offer);
            await db.SaveChangesAsync(Stop);
            await CupAsync(db, "STOCK", "OFFER");
        }

        await using var read = ledger.Open();

        Assert.Equal(["OFFER", "STOCK"], await StandAsync(read, SampleStep.Cupped));
        Assert.Equal(["OFFER"], await LateAsync(read));
        Assert.Equal(["OFFER"], await WaitAsync(read, SampleStep.Decided));
        Assert.Empty(await WaitAsync(read, SampleStep.Roasted));
        Assert.Equal((StepState.Ahead, false), ((await WayAsync(read, "STOCK")).Stops[^1].State, (await WayAsync(read, "STOCK")).Stops.Any(stop => stop.IsLate)));
    }

    /// <summary>
    /// A bag that came on 25 November was declined at 11:30 UTC of that day. In Auckland that was half past midnight of the 26th: New Zealand
    /// daylight time is UTC+13 (Daylight Time Order 2007). In Honolulu, UTC−10 (from memory), it was half past one on the 25th.
    /// </summary>
    [Theory, EveryEngine]
    public async Task Days_of_a_sample_are_the_houses_however_far_it_is_from_UTC(Engine engine)
    {
        var moment = new DateTimeOffset(2026, 11, 25, 11, 30, 0, TimeSpan.Zero);
        foreach (var (zone, day) in new[] { ("Pacific/Auckland", 26), ("Pacific/Honolulu", 25) })
        {
            await using var ledger = await ledgers.NewAsync(engine);
            await DecideAsync(ledger, new DateOnly(2026, 11, 25), ClockZone.Of(zone), moment, SampleKind.Type);
            await using var read = ledger.Open();

            var row = Assert.Single(await new SampleQuery(read).ListAsync(new SampleFilter("TYPE", At: SampleStep.Decided), Seal.None, 0, 10, Stop));

            Assert.Equal(new DateOnly(2026, 11, day), (await WayAsync(read, "TYPE")).Stops[^1].Taken!.On);
            Assert.Equal(new DateOnly(2026, 11, day), row.Stands!.On);
        }
    }

    /// <summary>Decided before the day of receipt began here, though that day had begun by UTC: 2:00 UTC of the 25th is the 24th in Honolulu.</summary>
    [Theory, EveryEngine]
    public async Task A_decision_of_the_evening_before_it_came_does_not_decide_it(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await DecideAsync(ledger, new DateOnly(2026, 11, 25), ClockZone.Of("Pacific/Honolulu"), new DateTimeOffset(2026, 11, 25, 2, 0, 0, TimeSpan.Zero), SampleKind.Type);
        await using var read = ledger.Open();

        Assert.Equal(["TYPE"], await StandAsync(read, SampleStep.Received));
        Assert.Null((await WayAsync(read, "TYPE")).Decided);
    }

    private static async Task<SampleOnItsWay> WayAsync(LedgerContext db, string label) =>
        await new SampleWayQuery(db).FindAsync(await db.Samples.AsNoTracking().SingleAsync(one => one.LabelCode == label, Stop), Today, Stop);

    private static async Task<IEnumerable<string>> StandAsync(LedgerContext db, SampleStep step)
    {
        var rows = await new SampleQuery(db).ListAsync(new SampleFilter(At: step, Sort: "label", WithExpected: true), Seal.None, 0, 100, Stop);
        Assert.All(rows, row => Assert.Equal(step, row.Stands!.Step));
        return rows.Select(row => row.LabelCode);
    }

    private static async Task<IEnumerable<string>> WaitAsync(LedgerContext db, SampleStep step) =>
        (await new SampleQuery(db).ListAsync(new SampleFilter(Waiting: step, Sort: "label"), Seal.None, 0, 100, Stop)).Select(row => row.LabelCode);

    /// <summary>Counted for the first page, which agrees with the list.</summary>
    private static async Task<IEnumerable<string>> LateAsync(LedgerContext db)
    {
        var rule = new LateRule(new SampleHabits(), Today.AddDays(60), ClockZone.Utc);
        var query = new SampleQuery(db);
        var rows = await query.ListAsync(new SampleFilter(LateBy: rule, Sort: "label", WithExpected: true), Seal.None, 0, 100, Stop);
        Assert.Equal(rows.Count, (await query.LateAsync(rule, Seal.None, Stop)).Values.Sum());
        return rows.Select(row => row.LabelCode);
    }

    private static Lot Offered(LedgerContext db, params SampleKind[] kinds)
    {
        var seller = new Supplier("Ribeirão Trading", SupplierKind.Importer);
        var lot = new Lot("A-1", "Loma Alta");
        db.AddRange(seller, Lead, lot);
        db.Add(new Offer(seller.Id, lot, new Packing(20, Weight.FromKilograms(60m), null), Asking.Nothing, new Terms(Incoterm.Fob, "Santos", null), OfferState.OnOffer, Today.AddDays(-60)));
        db.AddRange(kinds.Select(kind => new Sample(lot.Id, kind, Label(kind), Today.AddDays(-10), Weight.FromGrams(350m))));
        return lot;
    }

    /// <summary>Lot B of the open market is declined, of which samples of these kinds came.</summary>
    private static async Task DecideAsync(Ledger ledger, DateOnly cameOn, ClockZone clocks, DateTimeOffset at, params SampleKind[] kinds)
    {
        var (market, buyer) = await DecisionQueryTests.OpenAsync(ledger);
        await using (var db = ledger.Open())
        {
            (await db.Houses.SingleAsync(Stop)).ReadClocksIn(clocks.Name);
            db.AddRange(kinds.Select(kind => new Sample(market.LotOf("B").Id, kind, Label(kind), cameOn, Weight.FromGrams(350m), null, clocks)));
            await db.SaveChangesAsync(Stop);
        }

        await DecisionQueryTests.DecideAsync(ledger, market, buyer, "B", new Choice(Outcome.Decline, null, "stale sample", null), at);
    }

    private static string Label(SampleKind kind) => kind.ToString().ToUpperInvariant();

    private static (Contract Contract, Sample[] Samples) Waiting(LedgerContext db, params string[] labels)
    {
        var supplier = new Supplier("Cerro Alto Exports", SupplierKind.Exporter);
        var lot = new Lot("CA-17", "Cerro Alto washed", supplier.Id);
        var samples = labels.Select(label => new Sample(lot.Id, SampleKind.PreShipment, label, Today.AddDays(-10), Weight.FromGrams(500m))).ToArray();
        var contract = Contract.Draft("P26-001", supplier.Id, ArrivalCaseQueryTests.Terms(lot) with { Approval = new ApprovalTerms(ApprovalRule.Replace, 3, null) }, new Dictionary<Id<Lot>, Id<Decision>>(), Lead.Id, Noon);
        contract.Sign(new DateOnly(2026, 7, 1), null, Lead.Id, Noon);
        db.AddRange([Lead, supplier, lot, .. samples, contract]);
        return (contract, samples);
    }

    private static async Task CupAsync(LedgerContext db, params string[] labels)
    {
        var session = new CuppingSession("Two on the table", Today.AddDays(-5), CuppingForm.HundredPoint(), 5, Lead.Id);
        var lead = await db.People.SingleAsync(one => one.Id == Lead.Id, Stop);
        foreach (var (at, label) in labels.Index())
        {
            session.Pour(await db.Samples.SingleAsync(one => one.LabelCode == label, Stop), $"{401 + at}");
            session.Submit($"{401 + at}", lead, new SheetMarks([.. Enumerable.Repeat(Mark.Of(8m - at * 0.25m), 7)], [5, 5, 5], [0, 0]), Noon);
        }

        session.Close(Lead.Id, Noon, new ExpectedErrors(1.0, 0.5));
        db.Add(session);
        await db.SaveChangesAsync(Stop);
    }
}
