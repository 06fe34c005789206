using GreenLedger.Data.Contracts;
using GreenLedger.Data.Grading;
using GreenLedger.Data.Roasting;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Arrivals;

/// <summary>Everything that an arrival's verdicts ask about.</summary>
/// <param name="Samples">Of the lot, received, the newest first: pre-shipment and arrival samples to choose from.</param>
/// <param name="Left">Green coffee still kept of each of the samples.</param>
/// <param name="Evidence">Null while the two samples are not chosen.</param>
/// <param name="Papers">On the arrival, its shipment, its contract and the two samples, none that were removed, the oldest first.</param>
public sealed record ArrivalCase(
    Arrival Arrival,
    Shipment Shipment,
    Contract Contract,
    Lot Lot,
    IReadOnlyList<Sample> Samples,
    IReadOnlyDictionary<Id<Sample>, Weight> Left,
    CupEvidence? Evidence,
    GreenGrade? ApprovedGrade,
    GreenGrade? ArrivalGrade,
    ArrivalHabits Habits,
    IReadOnlyList<Attachment> Papers)
{
    /// <summary>Under its whole contract; null while more is to be shipped.</summary>
    public Weight? ShippedInAll { get; init; }

    /// <summary>The price by which lost weight is counted; null while it is not fixed.</summary>
    public PricePerWeight? Price => Contract.Terms.Price.Outright ?? (Contract.Position is { Final: { } final, Market: var market } ? market.Price(final) : null);

    /// <summary>On landed weights every kilogram counts.</summary>
    public WeightVerdict Weight() => WeightVerdict.Of(
        Arrival.Shipped, Arrival.Landed, Contract.Terms.Weights is { Basis: WeightBasis.Shipped, Franchise: var franchise } ? franchise : default, Price,
        ShippedInAll is { } all ? AgreedQuantity.Of(Contract.Terms.Net(), Contract.Terms.Weights.Tolerance) with { InAll = all } : null);

    /// <summary>As agreed, else the house's.</summary>
    public Score Tolerance => Contract.Terms.Quality.Limits?.CupTolerance ?? Habits.Tolerance;

    public ArrivalVerdict Quality()
    {
        var limits = ArrivalLimits.Of(Contract.Terms.Quality.Limits, Habits);
        return ArrivalVerdict.Of(Evidence?.Difference is { } difference ? QualityVerdict.Of(difference, Tolerance) : null, limits.Limits, ApprovedGrade, ArrivalGrade, limits.Agreed);
    }

    /// <summary>The approval that its sample was shipped on; null where none is on record.</summary>
    public SampleApproval? Approval => Contract.Approvals.LastOrDefault(one => one.LotId == Arrival.LotId && one.IsApproval);

    /// <summary>The two samples to be cupped blind together; null while one of them is not there.</summary>
    public (Sample Approved, Sample Drawn)? BlindPair =>
        (Samples.FirstOrDefault(sample => sample.Id == Arrival.ApprovedSampleId), Samples.FirstOrDefault(sample => sample.Id == Arrival.ArrivalSampleId)) is ({ } approved, { } drawn)
            ? (approved, drawn)
            : null;

    /// <summary>Whether something of both is left to be cupped together.</summary>
    public bool IsPairKept => BlindPair is { } pair && Left[pair.Approved.Id] > Domain.Measures.Weight.Zero && Left[pair.Drawn.Id] > Domain.Measures.Weight.Zero;

    /// <summary>What a claim is opened from.</summary>
    public ClaimBasis Basis() => new(Arrival, Shipment, Contract, Lot, Weight(), Quality(), Evidence, Samples, Papers);
}

/// <summary>Reads an arrival with its contract, samples and closed sessions.</summary>
public sealed class ArrivalCaseQuery(LedgerContext db)
{
    public async Task<ArrivalCase?> FindAsync(Id<Arrival> id, CancellationToken cancellationToken)
    {
        if (await db.Arrivals.AsNoTracking().Whole().SingleOrDefaultAsync(arrival => arrival.Id == id, cancellationToken) is not { } arrival)
        {
            return null;
        }

        var shipment = await db.Shipments.AsNoTracking().Whole().SingleAsync(one => one.Id == arrival.ShipmentId, cancellationToken);
        var contractId = shipment.Lots.Single(lot => lot.Id == arrival.ShipmentLotId).ContractId;
        var habits = await db.ArrivalHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        var samples = await db.Samples.AsNoTracking().Where(sample => sample.LotId == arrival.LotId && sample.ReceivedOn != null).OrderByDescending(sample => sample.ReceivedOn).ThenByDescending(sample => sample.Id).ToListAsync(cancellationToken);
        var contract = await db.Contracts.AsNoTracking().Whole().SingleAsync(one => one.Id == contractId, cancellationToken);
        return new ArrivalCase(
            arrival,
            shipment,
            contract,
            await db.Lots.AsNoTracking().SingleAsync(lot => lot.Id == arrival.LotId, cancellationToken),
            samples,
            await db.LeftOfAsync(samples, cancellationToken),
            await EvidenceAsync(arrival, habits, cancellationToken),
            await GradeAsync(arrival.ApprovedSampleId, cancellationToken),
            await GradeAsync(arrival.ArrivalSampleId, cancellationToken),
            habits,
            await PapersAsync(arrival, contractId, cancellationToken))
        {
            ShippedInAll = await ShippedInAllAsync(contract, cancellationToken),
        };
    }

    private async Task<Weight?> ShippedInAllAsync(Contract contract, CancellationToken cancellationToken)
    {
        if (contract.Goods is not (GoodsState.Shipped or GoodsState.Arrived or GoodsState.Closed))
        {
            return null;
        }

        var parts = await db.Shipments.AsNoTracking().Where(shipment => shipment.ShippedOn != null)
            .SelectMany(shipment => shipment.Lots.Where(lot => lot.ContractId == contract.Id), (_, lot) => lot.Net).ToListAsync(cancellationToken);
        return parts.Aggregate(Weight.Zero, (sum, part) => sum + part);
    }

    private async Task<CupEvidence?> EvidenceAsync(Arrival arrival, ArrivalHabits habits, CancellationToken cancellationToken)
    {
        if (arrival is not { ApprovedSampleId: { } approved, ArrivalSampleId: { } drawn })
        {
            return null;
        }

        var sessions = await db.CuppingSessions.AsNoTracking().ThatCupped([approved, drawn]).ToListAsync(cancellationToken);
        return CupEvidence.Of(sessions, approved, drawn, (double?)habits.BetweenSessions?.Points);
    }

    private async Task<IReadOnlyList<Attachment>> PapersAsync(Arrival arrival, Id<Contract> contractId, CancellationToken cancellationToken)
    {
        var samples = new[] { arrival.ApprovedSampleId, arrival.ArrivalSampleId }.OfType<Id<Sample>>().Select(id => id.Value).ToList();
        return await db.Attachments.AsNoTracking()
            .Where(paper => paper.RemovedAt == null
                && ((paper.About == PapersOf.Arrival && paper.AboutId == arrival.Id.Value)
                    || (paper.About == PapersOf.Shipment && paper.AboutId == arrival.ShipmentId.Value)
                    || (paper.About == PapersOf.Contract && paper.AboutId == contractId.Value)
                    || (paper.About == PapersOf.Sample && samples.Contains(paper.AboutId))))
            .OrderBy(paper => paper.At).ThenBy(paper => paper.Id).ToListAsync(cancellationToken);
    }

    private async Task<GreenGrade?> GradeAsync(Id<Sample>? sampleId, CancellationToken cancellationToken) => sampleId is { } id
        ? await db.GreenGrades.AsNoTracking().Whole().Where(grade => grade.SampleId == id).OrderByDescending(grade => grade.GradedOn).ThenByDescending(grade => grade.Id).FirstOrDefaultAsync(cancellationToken)
        : null;
}
