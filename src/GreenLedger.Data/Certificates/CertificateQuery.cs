using GreenLedger.Domain;
using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Certificates;

/// <summary>What a lot claims, held against the certificates of its producer and its seller.</summary>
public sealed record LotClaims(Id<Lot> LotId, string LotRef, IReadOnlyList<ClaimedScheme> Claims);

/// <summary>Reads certificates, and what lots claim.</summary>
public sealed class CertificateQuery(LedgerContext db)
{
    /// <summary>By scheme, then by the last day.</summary>
    /// <param name="runsOn">Those that have not ended on that day; null for all.</param>
    public async Task<IReadOnlyList<HeldCertificate>> ListAsync(string? scheme, DateOnly? runsOn, CancellationToken cancellationToken) => await Held(db.Certificates.AsNoTracking()
        .Where(one => (scheme == null || one.Scheme == scheme) && (runsOn == null || one.Until >= runsOn)), cancellationToken);

    public async Task<HeldCertificate?> FindAsync(Id<Certificate> id, CancellationToken cancellationToken) =>
        (await Held(db.Certificates.AsNoTracking().Where(one => one.Id == id), cancellationToken)) is [var one] ? one : null;

    /// <summary>What the lots of a contract claim, on the day that matters: of each lot the first day on board counts.</summary>
    public async Task<IReadOnlyList<LotClaims>> OfContractAsync(Contract contract, DateOnly today, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(contract);
        var boarded = await db.Shipments.AsNoTracking().Where(shipment => shipment.ShippedOn != null)
            .SelectMany(shipment => shipment.Lots.Where(line => line.ContractId == contract.Id), (shipment, line) => new { line.LotId, shipment.ShippedOn }).ToListAsync(cancellationToken);
        return await ClaimsAsync(contract, [.. contract.Lots.Select(line => line.LotId)], lot => boarded.Where(one => one.LotId == lot).Min(one => one.ShippedOn), today, cancellationToken);
    }

    /// <summary>What a lot of a shipment claims; null for one that claims nothing.</summary>
    public async Task<LotClaims?> OfShipmentLotAsync(Shipment shipment, ShipmentLot line, DateOnly today, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        ArgumentNullException.ThrowIfNull(line);
        var contract = await db.Contracts.AsNoTracking().Include(one => one.Versions).SingleAsync(one => one.Id == line.ContractId, cancellationToken);
        return await ClaimsAsync(contract, [line.LotId], _ => shipment.ShippedOn, today, cancellationToken) is [var claims, ..] ? claims : null;
    }

    private async Task<IReadOnlyList<LotClaims>> ClaimsAsync(Contract contract, IReadOnlyCollection<Id<Lot>> lotIds, Func<Id<Lot>, DateOnly?> onBoard, DateOnly today, CancellationToken cancellationToken)
    {
        var lots = await db.Lots.AsNoTracking().Where(lot => lotIds.Contains(lot.Id)).ToListAsync(cancellationToken);
        var claiming = lots.Where(lot => Claimed(lot, contract).Count > 0).OrderBy(lot => lot.Ref, StringComparer.OrdinalIgnoreCase).ToList();
        if (claiming.Count == 0)
        {
            return [];
        }

        var producers = claiming.Select(lot => lot.ProducerId).OfType<Id<Producer>>().ToList();
        var held = await Held(db.Certificates.AsNoTracking().Where(one => one.SupplierId == contract.SupplierId || (one.ProducerId != null && producers.Contains(one.ProducerId.Value))), cancellationToken);
        var habits = await db.CertificateHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        var signed = contract.Versions.Where(version => version.SignedOn is not null).Min(version => version.SignedOn);
        return [.. claiming.Select(lot => new LotClaims(
            lot.Id, lot.Ref,
            ClaimedScheme.Of(Claimed(lot, contract), [.. held.Where(one => one.Certificate.SupplierId is not null || one.Certificate.ProducerId == lot.ProducerId)], signed, onBoard(lot.Id), habits, today)))];
    }

    private static List<string> Claimed(Lot lot, Contract contract) => [.. lot.Certificates.Union(contract.Terms.Certificates, StringComparer.OrdinalIgnoreCase)];

    private async Task<IReadOnlyList<HeldCertificate>> Held(IQueryable<Certificate> certificates, CancellationToken cancellationToken) => [.. (await certificates
        .Select(one => new
        {
            Certificate = one,
            Supplier = db.Suppliers.Where(supplier => supplier.Id == one.SupplierId).Select(supplier => supplier.Name).FirstOrDefault(),
            Producer = db.Producers.Where(producer => producer.Id == one.ProducerId).Select(producer => producer.Name).FirstOrDefault(),
        })
        .OrderBy(row => row.Certificate.Scheme).ThenBy(row => row.Certificate.Until).ThenBy(row => row.Certificate.Number)
        .ToListAsync(cancellationToken)).Select(row => new HeldCertificate(row.Certificate, row.Supplier ?? row.Producer ?? "the house"))];
}
