using GreenLedger.Data.Arrivals;
using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Summaries;

/// <summary>Reads what suppliers, producers and origins kept of what was agreed.</summary>
public sealed class SupplierRecordQuery(LedgerContext db)
{
    public async Task<RecordHabits> HabitsAsync(CancellationToken cancellationToken) =>
        await db.RecordHabits.AsNoTracking().OfHouseAsync(cancellationToken);

    public async Task<RecordFacts> FactsAsync(CancellationToken cancellationToken)
    {
        var sources = new Sources(await db.ContractLots.AsNoTracking()
            .Join(db.Lots, line => line.LotId, lot => lot.Id, (_, lot) => new KnownLot(lot.Id, lot.Name, lot.ProducerId, lot.CountryCode))
            .Distinct().ToListAsync(cancellationToken));
        var contracts = await db.Contracts.AsNoTracking().Select(contract => new KnownContract(contract.Id, contract.SupplierId, contract.ShipUntil)).ToDictionaryAsync(contract => contract.Id, cancellationToken);
        var parts = await PartsAsync(cancellationToken);
        var arrivals = await db.Arrivals.AsNoTracking().ToListAsync(cancellationToken);
        return new RecordFacts(
            await OfferedAsync(cancellationToken),
            await JudgedAsync(sources, cancellationToken),
            [.. parts.Where(part => part.ShippedOn is not null).Select(part => new ShippedFact(Of(part, contracts, sources), Math.Max(0, part.ShippedOn!.Value.DayNumber - contracts[part.ContractId].ShipUntil.DayNumber), part.IsUnapproved))],
            [.. arrivals.Select(arrival => (arrival, Part: parts.Find(part => part.Id == arrival.ShipmentLotId))).Where(one => one.Part is not null)
                .Select(one => new LandedFact(Of(one.Part!, contracts, sources), one.arrival.Shipped, one.arrival.Landed))],
            await CuppedAsync(arrivals, parts, contracts, sources, cancellationToken),
            [.. (await db.Claims.AsNoTracking().Select(claim => new { claim.ContractId, claim.LotId, claim.Outcome, claim.Settled, IsReceived = claim.ArrivalId != null }).ToListAsync(cancellationToken))
                .Select(claim => new ClaimedFact(sources.Of(contracts[claim.ContractId].Supplier, claim.LotId), claim.Outcome, claim.Settled, claim.IsReceived))])
        {
            Before = await BeforeAsync(sources, cancellationToken),
        };
    }

    private async Task<IReadOnlyList<BeforeFact>> BeforeAsync(Sources sources, CancellationToken cancellationToken) =>
    [
        .. (await db.Contracts.AsNoTracking().SelectMany(contract => contract.Lots.Where(lot => lot.Received != null), (contract, lot) => new { contract.SupplierId, lot.LotId, lot.Received }).ToListAsync(cancellationToken))
            .Select(one => new BeforeFact(sources.Of(one.SupplierId, one.LotId), one.Received!.Value)),
    ];

    private static Source Of(Part part, Dictionary<Id<Contract>, KnownContract> contracts, Sources sources) => sources.Of(contracts[part.ContractId].Supplier, part.LotId);

    private Task<List<Part>> PartsAsync(CancellationToken cancellationToken) => db.Shipments.AsNoTracking()
        .SelectMany(shipment => shipment.Lots, (shipment, lot) => new Part(lot.Id, lot.ContractId, lot.LotId, shipment.ShippedOn, lot.IsUnapproved)).ToListAsync(cancellationToken);

    /// <summary>Counted in the database: a ledger holds more offers than anything else.</summary>
    private async Task<IReadOnlyList<OfferedFact>> OfferedAsync(CancellationToken cancellationToken)
    {
        var offered = await db.Offers.AsNoTracking().Join(db.Lots, offer => offer.LotId, lot => lot.Id, (offer, lot) => new { offer.SupplierId, lot.ProducerId, lot.CountryCode })
            .GroupBy(one => one).Select(group => new { group.Key.SupplierId, group.Key.ProducerId, group.Key.CountryCode, Count = group.Count() }).ToListAsync(cancellationToken);
        var bought = await db.Decisions.AsNoTracking().Standing().Where(decision => decision.Outcome == Outcome.Buy)
            .Join(db.Offers, decision => decision.OfferId, offer => offer.Id, (_, offer) => new { offer.Id, offer.SupplierId, offer.LotId }).Distinct()
            .Join(db.Lots, offer => offer.LotId, lot => lot.Id, (offer, lot) => new { offer.SupplierId, lot.ProducerId, lot.CountryCode })
            .GroupBy(one => one).Select(group => new { group.Key.SupplierId, group.Key.ProducerId, group.Key.CountryCode, Count = group.Count() }).ToListAsync(cancellationToken);
        return [.. offered.Select(one => new OfferedFact(
            new Source(one.SupplierId, one.ProducerId, one.CountryCode),
            one.Count,
            bought.Find(other => other.SupplierId == one.SupplierId && other.ProducerId == one.ProducerId && other.CountryCode == one.CountryCode)?.Count ?? 0))];
    }

    private async Task<IReadOnlyList<JudgedFact>> JudgedAsync(Sources sources, CancellationToken cancellationToken)
    {
        var judged = await db.Contracts.AsNoTracking()
            .SelectMany(contract => contract.Approvals, (contract, approval) => new { contract.Id, contract.SupplierId, approval.LotId, approval.Round, approval.Verdict }).ToListAsync(cancellationToken);
        return [.. judged.GroupBy(one => (one.Id, one.SupplierId, one.LotId))
            .Select(lot => new JudgedFact(sources.Of(lot.Key.SupplierId, lot.Key.LotId), [.. lot.OrderBy(one => one.Round).Select(one => one.Verdict != ApprovalVerdict.Refused)]))];
    }

    /// <summary>The difference that the arrival's own verdict stands on, so that its page and the record say the same.</summary>
    private async Task<IReadOnlyList<CuppedFact>> CuppedAsync(
        List<Arrival> arrivals, List<Part> parts, Dictionary<Id<Contract>, KnownContract> contracts, Sources sources, CancellationToken cancellationToken)
    {
        var samples = arrivals.SelectMany(arrival => new[] { arrival.ApprovedSampleId, arrival.ArrivalSampleId }).OfType<Id<Sample>>().ToHashSet();
        var between = (await db.ArrivalHabits.AsNoTracking().OfHouseAsync(cancellationToken)).BetweenSessions;
        var sessions = (await db.CuppingSessions.AsNoTracking().ThatCupped(samples).ToListAsync(cancellationToken))
            .SelectMany(session => session.Samples.Select(sample => sample.SampleId).Distinct(), (session, sample) => (Session: session, Sample: sample))
            .ToLookup(one => one.Sample, one => one.Session);
        var cupped = new List<CuppedFact>();
        foreach (var arrival in arrivals)
        {
            if (arrival is { ApprovedSampleId: { } approved, ArrivalSampleId: { } drawn } && parts.Find(part => part.Id == arrival.ShipmentLotId) is { } part
                && CupEvidence.Of([.. sessions[approved].Union(sessions[drawn])], approved, drawn, (double?)between?.Points).Difference is { } cup)
            {
                cupped.Add(new CuppedFact(Of(part, contracts, sources), arrival.Id, sources.NameOf(arrival.LotId), arrival.ReceivedOn, cup));
            }
        }

        return cupped;
    }

    private sealed record KnownLot(Id<Lot> Id, string Name, Id<Producer>? Producer, string? Origin);

    private sealed record KnownContract(Id<Contract> Id, Id<Supplier> Supplier, DateOnly ShipUntil);

    private sealed record Part(Id<Domain.Shipments.ShipmentLot> Id, Id<Contract> ContractId, Id<Lot> LotId, DateOnly? ShippedOn, bool IsUnapproved);

    /// <summary>Where the lots on contracts come from.</summary>
    private sealed class Sources(IEnumerable<KnownLot> lots)
    {
        private readonly Dictionary<Id<Lot>, KnownLot> _lots = lots.ToDictionary(lot => lot.Id);

        public Source Of(Id<Supplier> supplier, Id<Lot> lot) => _lots.GetValueOrDefault(lot) is { } known ? new Source(supplier, known.Producer, known.Origin) : new Source(supplier, null, null);

        public string NameOf(Id<Lot> lot) => _lots.GetValueOrDefault(lot)?.Name ?? "";
    }
}
