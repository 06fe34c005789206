using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Arrivals;

public sealed class ArrivalCaseQueryTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 24, 12, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly OnBoard = new(2026, 9, 28);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task An_arrival_comes_back_with_everything_its_verdicts_ask_about(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var id = await FillAsync(ledger);
        await using var db = ledger.Open();

        var found = (await new ArrivalCaseQuery(db).FindAsync(id, Stop))!;

        // Handbook, trade 8, example G: 639.09 USD; quality by three cuppers a whole form's quarter points apart, 7 × 0.25.
        Assert.Equal(Money.Of(639.09m, Currency.Usd), found.Weight().Worth);
        Assert.Equal(Meeting.OneSession, found.Evidence!.Difference!.Meeting);
        Assert.Equal(-1.75, found.Evidence.Difference.Points, 9);
        Assert.Equal(ArrivalOutcome.Short, found.Quality().Outcome);
        Assert.Equal(["CSQU3054383"], found.Shipment.Containers.Select(container => container.Number));
        Assert.Equal((2, "musty"), (found.Arrival.Condition.WetBags, found.Arrival.Condition.Odour));
    }

    [Theory, EveryEngine]
    public async Task The_papers_of_its_shipment_are_evidence_too_and_those_of_other_records_are_not(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var id = await FillAsync(ledger);
        await using (var writing = ledger.Open())
        {
            var arrival = await writing.Arrivals.SingleAsync(one => one.Id == id, Stop);
            foreach (var (about, name) in new[] { (arrival.ShipmentId.Value, "weight-certificate.pdf"), (Guid.CreateVersion7(), "another.pdf") })
            {
                var file = new StoredFile(name, "application/pdf", [1], arrival.By, Noon);
                writing.AddRange(file, new Attachment(PapersOf.Shipment, about, file, arrival.By, Noon));
            }

            await writing.SaveChangesAsync(Stop);
        }

        await using var db = ledger.Open();
        var found = (await new ArrivalCaseQuery(db).FindAsync(id, Stop))!;

        Assert.Equal(["weight-certificate.pdf"], found.Papers.Select(paper => paper.FileName));
    }

    [Theory, EveryEngine]
    public async Task Lists_find_it_by_lot_and_by_container(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using var db = ledger.Open();
        var query = new ArrivalListQuery(db);

        var row = Assert.Single(await query.ListAsync("cerro", 0, 10, Stop));

        Assert.Equal(("CA-17", "S26-001", 275, 274), (row.LotRef, row.ShipmentRef, row.ShippedBags, row.Bags));
        Assert.Equal(-0.9750m, Math.Round(row.Difference.Points, 4)); // handbook, trade 8, example G
        Assert.Equal(1, await query.CountAsync("csqu3054383", Stop));
        Assert.Equal(0, await query.CountAsync("nowhere", Stop));
        Assert.Equal("S26-002", await db.Shipments.NextRefAsync(OnBoard, Stop));
    }

    [Theory, EveryEngine]
    public async Task A_lot_of_a_shipment_is_received_once(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var id = await FillAsync(ledger);
        await using var db = ledger.Open();
        var known = await db.Arrivals.SingleAsync(arrival => arrival.Id == id, Stop);
        var shipment = await db.Shipments.Whole().SingleAsync(Stop);

        db.Add(new Arrival(shipment, known.ShipmentLotId, new Receipt(OnBoard, 1, Weight.FromKilograms(69m), new ReceiptCondition(0, 0, 0, false, null, null), null), known.By, Noon));

        await Assert.ThrowsAsync<DbUpdateException>(() => db.SaveChangesAsync(Stop));
    }

    /// <param name="apart">In two sessions with the house reference in both, which cupped 1.75 points lower in the second, as the coffee did.</param>
    internal static async Task<Id<Arrival>> FillAsync(Ledger ledger, bool apart = false)
    {
        await using var db = ledger.Open();
        Person[] panel = [new("Ines Talavera", Role.Cupper), new("Joost Ravelaar", Role.LeadCupper), new("Ama Serwaa", Role.Cupper)];
        var supplier = new Supplier("Cerro Alto Exports", SupplierKind.Exporter);
        var lot = new Lot("CA-17", "Cerro Alto washed", supplier.Id);
        Sample[] samples = [new(lot.Id, SampleKind.PreShipment, "PS1", new DateOnly(2026, 8, 20), Weight.FromGrams(500m)), new(lot.Id, SampleKind.Arrival, "AR1", new DateOnly(2026, 11, 20), Weight.FromGrams(500m))];
        var contract = Contract.Draft("P26-001", supplier.Id, Terms(lot), new Dictionary<Id<Lot>, Id<Decision>>(), panel[1].Id, Noon);
        contract.Sign(new DateOnly(2026, 7, 1), null, panel[1].Id, Noon);
        var shipment = new Shipment("S26-001", new Passage("BL-77", "Linnet", "012E", "COCTG", "DEHAM", null, null, OnBoard, OnBoard.AddDays(28), null));
        shipment.Carry(contract, contract.Lots[0].Id, 275, Weight.FromKilograms(18_975m));
        shipment.Load([("CSQU3054383", "SL1")]);
        var receipt = new Receipt(OnBoard.AddDays(31), 274, Weight.FromKilograms(18_790m), new ReceiptCondition(2, 0, 0, false, "musty", true), null);
        var arrival = new Arrival(shipment, shipment.Lots[0].Id, receipt, panel[1].Id, Noon);
        arrival.Compare(samples[0], samples[1]);
        db.AddRange([.. panel, supplier, lot, .. samples, contract, shipment, arrival, .. Sessions(samples, panel, apart)]);
        await db.SaveChangesAsync(Stop);
        return arrival.Id;
    }

    private static IEnumerable<object> Sessions(Sample[] samples, Person[] panel, bool apart)
    {
        var form = CuppingForm.HundredPoint();
        if (!apart)
        {
            return [Session(form, panel, 23, (samples[0], 8m), (samples[1], 7.75m))];
        }

        var reference = new Sample(samples[0].LotId, SampleKind.Offer, "REF", new DateOnly(2026, 8, 1), Weight.FromGrams(500m));
        return [reference, Session(form, panel, 20, (samples[0], 8m), (reference, 8m)), Session(form, panel, 23, (samples[1], 7.75m), (reference, 7.75m))];
    }

    private static CuppingSession Session(CuppingForm form, Person[] panel, int day, params (Sample Sample, decimal Mark)[] poured)
    {
        var session = new CuppingSession($"Arrival and approved, {day}", new DateOnly(2026, 11, day), form, 5, panel[1].Id);
        foreach (var (at, (sample, mark)) in poured.Index())
        {
            session.Pour(sample, $"{401 + at}", isReference: sample.Kind == SampleKind.Offer);
            foreach (var (seat, cupper) in panel.Index())
            {
                session.Submit($"{401 + at}", cupper, new SheetMarks([.. Enumerable.Repeat(Mark.Of(mark + seat * 0.25m), 7)], [5, 5, 5], [0, 0]), Noon);
            }
        }

        session.Close(panel[1].Id, Noon, new ExpectedErrors(1.0, 0.5));
        return session;
    }

    internal static ContractTerms Terms(Lot lot) => new(
        "Sorrel Roasters",
        "Cerro Alto Exports",
        [new ContractedLot(lot.Id, lot.Ref, lot.Name, "2026/27", 275, Weight.FromKilograms(69m))],
        new QualityTerms("Washed arabica, screen 16 and above", Score.Of(84m)),
        PriceTerms.AtPrice(PricePerWeight.FromCentsPerPound(321.65m)),
        new DeliveryTerms(Incoterm.Fob, "Cartagena", new DateOnly(2026, 9, 1), new DateOnly(2026, 9, 30)),
        new WeightTerms(WeightBasis.Shipped, Percent.Of(0.5m), Percent.Of(3m)),
        new ApprovalTerms(ApprovalRule.None, null, null),
        "Net cash against documents on first presentation",
        [],
        new FormTerms("ESCC, 2018, amended January 2021", "London", 21, 28, 45),
        null);
}
