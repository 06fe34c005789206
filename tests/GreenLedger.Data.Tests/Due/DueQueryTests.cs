using GreenLedger.Data.Certificates;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Due;
using GreenLedger.Data.Offers;
using GreenLedger.Data.Samples;
using GreenLedger.Data.Shipments;
using GreenLedger.Data.Stock;
using GreenLedger.Data.Trace;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Due;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Data.Tests.Due;

public sealed class DueQueryTests(Ledgers ledgers) : IClassFixture<Ledgers>
{
    private static readonly DateOnly Today = new(2026, 11, 26);
    private static readonly DateTimeOffset Now = new(2026, 11, 26, 9, 0, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task It_reads_across_the_rooms_that_the_reader_may_open(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await FillAsync(ledger);
        await using var db = ledger.Open();

        var all = await Query(db).ListAsync(_ => true, Seal.None, Today, Stop);
        var cupper = await Query(db).ListAsync(area => area is "Samples" or "Cupping", Seal.None, Today, Stop);

        // The house grades within 2 days of receipt (SampleHabits): 22 November.
        var sample = Assert.Single(all, line => line.Kind == DueKind.Sample);
        Assert.Equal((new DateOnly(2026, 11, 22), "sample room"), (sample.On, sample.By));
        // Shipped until 31 March 2027, after 30 December 2026: Regulation (EU) 2023/1115 applies (handbook, trade 7.1).
        Assert.Equal([DueKind.Sample, DueKind.Session, DueKind.Approval, DueKind.Shipment, DueKind.Diligence], all.Select(line => line.Kind));
        Assert.Equal([DueKind.Sample, DueKind.Session], cupper.Select(line => line.Kind));
        Assert.Equal("Marthe", Assert.Single(all, line => line.Kind == DueKind.Session).By);
    }

    [Theory, EveryEngine]
    public async Task What_an_open_session_seals_is_told_in_no_line(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var cupper = await FillAsync(ledger);
        await using var db = ledger.Open();
        var seal = await new SealQuery(db).ForAsync(cupper, Role.Cupper | Role.Buyer, Stop);

        var lines = await Query(db).ListAsync(_ => true, seal, Today, Stop);

        Assert.False(seal.IsEmpty);
        Assert.DoesNotContain(lines, line => line.What.Contains("CA-17", StringComparison.Ordinal) || line.What.Contains("P26-001", StringComparison.Ordinal) || line.What.Contains("OF1", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.Kind == DueKind.Session);
    }

    [Theory, EveryEngine]
    public async Task A_purpose_at_its_reorder_point_is_due_to_whoever_reads_the_stock(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();
        // 60 kg a week and nothing in stock: below the reorder point of any lead time; where nothing is used, nothing is bought.
        db.AddRange(new Purpose(new PurposeTerms("Winter espresso", null, null, null, Weight.FromKilograms(60m))), new Purpose(new PurposeTerms("Dormant", null, null, null, Weight.Zero)));
        await db.SaveChangesAsync(Stop);

        var all = await Query(db).ListAsync(_ => true, Seal.None, Today, Stop);
        var cupper = await Query(db).ListAsync(area => area is "Samples" or "Cupping", Seal.None, Today, Stop);

        Assert.Equal("buy for Winter espresso: stock and what is to come are at the reorder point", Assert.Single(all, line => line.Kind == DueKind.Reorder).What);
        Assert.DoesNotContain(cupper, line => line.Kind == DueKind.Reorder);
    }

    private static DueQuery Query(LedgerContext db) => new(db, new SampleQuery(db), new FixingsQuery(db), new ShipmentQuery(db), new EndingCertificatesQuery(db, new CertificateQuery(db)), new PurposeQuery(db, new ExpectedQuery(db, new StockQuery(db))), new BoughtDiligenceQuery(db, new ShipmentQuery(db), new DiligenceQuery(db, CountryOutlines.None)));

    /// <summary>A signed contract that waits for approval, a sample to grade, and an open session that pours it; the cupper who has handed in.</summary>
    private static async Task<Id<Person>> FillAsync(Ledger ledger)
    {
        await using var db = ledger.Open();
        var (lead, cupper) = (new Person("Marthe", Role.LeadCupper), new Person("Ines", Role.Cupper | Role.Buyer));
        var supplier = new Supplier("Cerro Alto Exports", SupplierKind.Exporter);
        var lot = new Lot("CA-17", "Cerro Alto washed", supplier.Id);
        var sample = new Sample(lot.Id, SampleKind.PreShipment, "OF1", new DateOnly(2026, 11, 20), Weight.FromGrams(300m));
        var contract = Contract.Draft("P26-001", supplier.Id, Terms(lot), new Dictionary<Id<Lot>, Id<Decision>>(), lead.Id, Now);
        contract.Sign(Today, null, lead.Id, Now);
        var form = CuppingForm.Published().First(one => one.Id == CuppingForm.HundredPointId);
        var session = new CuppingSession("Thursday", Today, form, 5, lead.Id);
        session.Pour(sample, "401");
        session.Submit("401", cupper, new SheetMarks([.. Enumerable.Repeat(Mark.Of(8m), 7)], [5, 5, 5], [0, 0]), Now);
        db.AddRange(lead, cupper, supplier, lot, sample, contract, session);
        await db.SaveChangesAsync(Stop);
        return cupper.Id;
    }

    private static ContractTerms Terms(Lot lot) => new(
        "Sorrel Roasters",
        "Cerro Alto Exports",
        [new ContractedLot(lot.Id, lot.Ref, lot.Name, "2026/27", 275, Weight.FromKilograms(69m))],
        new QualityTerms("Washed arabica", null),
        PriceTerms.AtPrice(PricePerWeight.FromCentsPerPound(321.65m)),
        new DeliveryTerms(Incoterm.Fob, "Cartagena", new DateOnly(2027, 2, 1), new DateOnly(2027, 3, 31)),
        new WeightTerms(WeightBasis.Shipped, Percent.Of(0.5m), Percent.Of(3m)),
        new ApprovalTerms(ApprovalRule.Replace, 3, new DateOnly(2027, 1, 15)),
        "Net cash against documents",
        [],
        new FormTerms("ESCC, 2018", "London", 21, 28, 45),
        null);
}
