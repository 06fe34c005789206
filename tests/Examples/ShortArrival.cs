using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Examples;

/// <summary>
/// Example G of handbook trade.md section 8: 275 bags of 69 kg shipped, 18,790 kg landed, at 321.65 ¢/lb. Besides, three
/// cuppers found the arrival seven quarter points below the approved sample in one session, two bags came wet, and the vessel
/// sailed three days after the period. Discharged on 3 March 2026, as in the handbook's check value 36.
/// </summary>
internal sealed class ShortArrival
{
    public static readonly DateOnly Discharged = new(2026, 3, 3);
    public static readonly DateOnly Received = new(2026, 3, 10);
    public static readonly DateOnly Claimed = new(2026, 3, 25);
    public static readonly DateTimeOffset Now = new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero);

    public ShortArrival(Weight? landed = null, ReceiptCondition? condition = null, PriceTerms? price = null, decimal arrivalMark = 7.75m, DateOnly? shipUntil = null)
    {
        Supplier = new Supplier("Cerro Alto Exports", SupplierKind.Exporter);
        Lot = new Lot("CA-17", "Cerro Alto washed", Supplier.Id);
        Approved = new Sample(Lot.Id, SampleKind.PreShipment, "PS1", new DateOnly(2026, 1, 12), Weight.FromGrams(500m));
        Drawn = new Sample(Lot.Id, SampleKind.Arrival, "AR1", Received, Weight.FromGrams(500m));
        Contract = Contract.Draft("P26-001", Supplier.Id, Terms(price, shipUntil), new Dictionary<Id<Lot>, Id<Decision>>(), Buyer.Id, Now);
        Contract.Sign(new DateOnly(2025, 11, 3), null, Buyer.Id, Now);
        Shipment = new Shipment("S26-001", new Passage("BL-77", "Linnet", "012E", "COCTG", "DEHAM", null, null, new DateOnly(2026, 2, 3), Discharged, null));
        Shipment.Carry(Contract, Contract.Lots[0].Id, 275, Weight.FromKilograms(18_975m));
        Shipment.Load([("CSQU3054383", "SL1")]);
        Arrival = new Arrival(
            Shipment, Shipment.Lots[0].Id, new Receipt(Received, 275, landed ?? Weight.FromKilograms(18_790m), condition ?? new ReceiptCondition(2, 0, 0, false, null, true), null), Buyer.Id, Now);
        Arrival.Compare(Approved, Drawn);
        Session = Cup(arrivalMark);
        var file = new StoredFile("wet-bags.png", "image/png", [1, 2, 3], Buyer.Id, Now);
        Photograph = new Attachment(PapersOf.Arrival, Arrival.Id.Value, file, Buyer.Id, Now);
        (File, Evidence) = (file, CupEvidence.Of([Session], Approved.Id, Drawn.Id, null));
    }

    public Person Buyer { get; } = new("Imke Adler", Role.Buyer);

    public Person[] Panel { get; } = [new("Ines Talavera", Role.Cupper), new("Joost Ravelaar", Role.LeadCupper), new("Ama Serwaa", Role.Cupper)];

    public Supplier Supplier { get; }

    public Lot Lot { get; }

    public Sample Approved { get; }

    public Sample Drawn { get; }

    public Contract Contract { get; }

    public Shipment Shipment { get; }

    public Arrival Arrival { get; }

    public CuppingSession Session { get; }

    public Attachment Photograph { get; }

    public StoredFile File { get; }

    public CupEvidence Evidence { get; }

    /// <summary>Everything that a ledger needs to hold it.</summary>
    public IEnumerable<object> Records => [Buyer, .. Panel, Supplier, Lot, Approved, Drawn, Contract, Shipment, Arrival, Session, File, Photograph];

    /// <param name="grade">What was measured on the arrival; null where it was not graded.</param>
    public ClaimBasis Basis(GreenGrade? grade = null) => new(
        Arrival,
        Shipment,
        Contract,
        Lot,
        WeightVerdict.Of(Arrival.Shipped, Arrival.Landed, Percent.Of(0.5m), Contract.Terms.Price.Outright),
        ArrivalVerdict.Of(Evidence.Difference is { } difference ? QualityVerdict.Of(difference, Score.Of(1m)) : null, PhysicalLimits.WashedSpecialty, null, grade, new HashSet<string> { "Moisture" }),
        Evidence,
        [Approved, Drawn],
        [Photograph]);

    public Claim Open(ClaimOrder order, string @ref = "C26-001", params Claim[] others) => Claim.Open(@ref, Basis(), order, others, Buyer.Id, Now);

    private ContractTerms Terms(PriceTerms? price, DateOnly? shipUntil) => new(
        "Sorrel Roasters",
        "Cerro Alto Exports",
        [new ContractedLot(Lot.Id, Lot.Ref, Lot.Name, "2025/26", 275, Weight.FromKilograms(69m))],
        new QualityTerms("Washed arabica, screen 16 and above", Score.Of(84m)),
        price ?? PriceTerms.AtPrice(PricePerWeight.FromCentsPerPound(321.65m)),
        new DeliveryTerms(Incoterm.Fob, "Cartagena", new DateOnly(2026, 1, 1), shipUntil ?? new DateOnly(2026, 1, 31)),
        new WeightTerms(WeightBasis.Shipped, Percent.Of(0.5m), Percent.Of(3m)),
        new ApprovalTerms(ApprovalRule.None, null, null),
        "Net cash against documents on first presentation",
        [],
        new FormTerms("ESCC, 2018, amended January 2021", "London", 21, 28, 45),
        null);

    private CuppingSession Cup(decimal arrivalMark)
    {
        var session = new CuppingSession("Arrival beside approved", new DateOnly(2026, 3, 20), CuppingForm.HundredPoint(), 5, Panel[1].Id);
        foreach (var (sample, code, mark) in new[] { (Approved, "401", 8m), (Drawn, "402", arrivalMark) })
        {
            session.Pour(sample, code);
            foreach (var (seat, cupper) in Panel.Index())
            {
                session.Submit(code, cupper, new SheetMarks([.. Enumerable.Repeat(Mark.Of(mark + (seat * 0.25m)), 7)], [5, 5, 5], [0, 0]), Now);
            }
        }

        session.Close(Panel[1].Id, Now, new ExpectedErrors(1.0, 0.5));
        return session;
    }
}
