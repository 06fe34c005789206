using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Domain.Arrivals;

/// <summary>Who stands against whom, and by which agreement.</summary>
/// <param name="ContractVersion">The version in force when the claim was opened.</param>
/// <param name="Form">The standard form referred to.</param>
public sealed record ClaimParties(string Buyer, string Seller, string ContractRef, int ContractVersion, DateOnly? SignedOn, string Form, string Arbitration);

/// <summary>Which goods, and how they travelled; without a shipment for what never went on board.</summary>
/// <param name="Containers">Number and seal: <c>CSQU3054383, seal SL1</c>.</param>
public sealed record ClaimGoods(
    string LotRef, string LotName, string? ShipmentRef, string? BillOfLading, string? Vessel, string? PortOfLoading, string? PortOfDestination,
    DateOnly ShipUntil, DateOnly? ShippedOn, DateOnly? DischargedOn, IReadOnlyList<string> Containers);

/// <summary>What was received, and how.</summary>
/// <param name="Corrections">How often the receipt had been corrected by then.</param>
public sealed record ClaimReceipt(DateOnly On, int ShippedBags, int Bags, Weight Shipped, Weight Landed, IReadOnlyList<string> Faults, string? Note, int? TenthsOfCelsius, Percent? Humidity, int Corrections);

/// <summary>Both panels and the verdict, in points.</summary>
/// <param name="Approved">Mean of the approved sample's cuppers.</param>
/// <param name="Difference">Arrival less approved.</param>
/// <param name="Lower">One-sided 95 % bound.</param>
/// <param name="Upper">One-sided 95 % bound.</param>
/// <param name="Sessions">Title and day of each.</param>
public sealed record ClaimCup(
    string ApprovedCode, double Approved, int ApprovedCuppers, string ArrivalCode, double Arrival, int ArrivalCuppers,
    double Difference, double? Lower, double? Upper, Score Tolerance, ArrivalOutcome Outcome, IReadOnlyList<string> Sentences, IReadOnlyList<string> Sessions);

/// <summary>A photograph or document, by which it can be told apart from any other.</summary>
/// <param name="Sha256">Of its bytes, in lower-case hexadecimal.</param>
public sealed record ClaimPaper(string On, string FileName, string Sha256);

/// <summary>A claim as it was opened: grounds, evidence, deadlines and amount, frozen. What is found later belongs in a note.</summary>
/// <param name="Receipt">Null where the goods did not come.</param>
/// <param name="Findings">What shows each ground, in a sentence.</param>
/// <param name="Weight">The weight verdict's arithmetic.</param>
/// <param name="Cup">Null where the two samples were not cupped.</param>
/// <param name="Price">By which weight was counted; null where nothing was.</param>
/// <param name="IsPriceProvisional">The contract's price was not fixed.</param>
/// <param name="Invoiced">The weight that the seller invoices.</param>
/// <param name="Missing">What was agreed of goods that did not come; null for a claim on an arrival.</param>
public sealed record ClaimCase(
    ClaimParties Parties,
    ClaimGoods Goods,
    ClaimReceipt? Receipt,
    IReadOnlyList<GroundFinding> Findings,
    IReadOnlyList<string> Weight,
    ClaimCup? Cup,
    IReadOnlyList<LimitVerdict> Limits,
    IReadOnlyList<ClaimTime> Times,
    IReadOnlyList<ClaimPaper> Papers,
    IReadOnlyList<ClaimLine> Lines,
    Currency Currency,
    PricePerWeight? Price,
    bool IsPriceProvisional,
    Weight Invoiced,
    string? Words,
    ClaimMissing? Missing = null)
{
    public IReadOnlyList<ClaimGround> Grounds() => [.. Findings.Select(finding => finding.Ground)];

    /// <summary>The sum of the lines; null where no amount is stated.</summary>
    public Money? Amount() => Lines.Count == 0 ? null : Lines.Aggregate(Money.Zero(Currency), (sum, line) => sum + line.Amount);

    public bool IsLate() => Times.Any(time => time.IsLate());

    /// <summary>The first deadline of the claim itself, weighing left aside; null where none is known.</summary>
    public DateOnly? LastDay() => Times.Where(time => time.What != ClaimTimes.Weighing).Min(time => time.LastDay);

    /// <exception cref="RuleBrokenException">A ground is missing, twice or not shown, or the amount cannot be.</exception>
    internal static ClaimCase Of(ClaimBasis basis, ClaimOrder order)
    {
        var (contract, terms, arrival) = (basis.Contract, basis.Contract.Terms, basis.Arrival);
        var version = contract.InForce ?? contract.Newest;
        var landedCounts = terms.Weights.Basis == WeightBasis.Landed;
        return new ClaimCase(
            new ClaimParties(terms.Buyer, terms.Seller, contract.Ref, version.Number, version.SignedOn, terms.Form.Name, terms.Form.Arbitration),
            GoodsOf(basis.Lot.Ref, basis.Lot.Name, basis.Shipment, basis.Contract.Terms.Delivery.ShipUntil),
            new ClaimReceipt(arrival.ReceivedOn, arrival.ShippedBags, arrival.Bags, arrival.Shipped, arrival.Landed, [.. arrival.Condition.Faults()], arrival.Note, arrival.TenthsOfCelsius, arrival.Humidity, arrival.Corrections),
            Shown(basis, order),
            basis.Weight.Sentences,
            CupOf(basis),
            basis.Quality.Limits,
            ClaimTimes.Of(terms.Form, basis.Shipment, order.Grounds, arrival.ReceivedOn, order.On),
            [.. basis.Papers.Select(paper => new ClaimPaper(paper.About.Word(), paper.FileName, paper.Sha256))],
            ClaimLine.Of(basis, order),
            basis.Currency,
            basis.Weight.Price ?? order.ProvisionalPrice,
            basis.Weight.Price is null,
            landedCounts ? arrival.Landed : arrival.Shipped,
            Rule.OptionalText(order.Words, "What the seller is to read", 4000, nameof(order.Words)));
    }

    private static List<GroundFinding> Shown(ClaimBasis basis, ClaimOrder order)
    {
        Rule.Require(order.Grounds.Count > 0, "Name at least one ground.", nameof(order.Grounds));
        var findings = order.Grounds.Distinct().Order().Select(ground => basis.Findings.SingleOrDefault(finding => finding.Ground == ground)).ToList();
        Rule.Require(findings.TrueForAll(finding => finding is not null), "Choose the grounds from the list.", nameof(order.Grounds));
        foreach (var finding in findings)
        {
            Rule.Require(finding!.IsShown, $"Nothing shows {finding.Ground.Word()} as a ground. {finding.Sentence}", nameof(order.Grounds));
        }

        return findings!;
    }

    internal static ClaimGoods GoodsOf(string lotRef, string lotName, Shipment shipment, DateOnly shipUntil)
    {
        var vessel = string.Join(", voyage ", new[] { shipment.Vessel, shipment.Voyage }.OfType<string>());
        return new ClaimGoods(
            lotRef, lotName, shipment.Ref, shipment.BillOfLading, vessel.Length == 0 ? null : vessel, shipment.PortOfLoading, shipment.PortOfDestination,
            shipUntil, shipment.ShippedOn, shipment.DischargedOn,
            [.. shipment.Containers.Select(container => container.SealNumber is { } seal ? $"{container.Number}, seal {seal}" : container.Number)]);
    }

    private static ClaimCup? CupOf(ClaimBasis basis)
    {
        if (basis is not { Quality.Cup: { } cup, Evidence: { Approved: { } first, Arrival: { } second } })
        {
            return null;
        }

        var difference = cup.Difference;
        return new ClaimCup(
            CodeOf(basis, basis.Arrival.ApprovedSampleId), difference.Approved, difference.ApprovedCuppers,
            CodeOf(basis, basis.Arrival.ArrivalSampleId), difference.Arrival, difference.ArrivalCuppers,
            difference.Points, cup.Lower, cup.Upper, cup.Tolerance, cup.Outcome, cup.Sentences,
            [.. new[] { first, second }.DistinctBy(session => session.Id).Select(session => FormattableString.Invariant($"{session.Title}, {session.HeldOn:d MMM yyyy}"))]);
    }

    private static string CodeOf(ClaimBasis basis, Id<Sample>? id) => basis.Samples.FirstOrDefault(sample => sample.Id == id)?.LabelCode ?? "";
}
