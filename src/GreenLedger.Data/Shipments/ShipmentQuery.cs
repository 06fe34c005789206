using GreenLedger.Data.Contracts;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Shipments;

/// <summary>Bags and net weight of a lot of a contract, by the shipping papers; 0 bags take it off.</summary>
public sealed record LadingLine(Id<ContractLot> ContractLotId, int Bags, Weight Net);

/// <summary>What has to be known to write a shipment's lots down: their contracts, tracked, with what else was shipped and received of them.</summary>
/// <param name="Contracts">The contracts of its lots.</param>
/// <param name="Shipments">All that carry lots of those contracts.</param>
/// <param name="Arrivals">What came of them.</param>
/// <param name="Rules">Which documents the house asks for.</param>
/// <param name="Origins">Where the lots grew, as far as it is known.</param>
public sealed record Lading(
    IReadOnlyList<Contract> Contracts, IReadOnlyList<Shipment> Shipments, IReadOnlyList<Arrival> Arrivals, IReadOnlyList<DocumentRule> Rules, IReadOnlyDictionary<Id<Lot>, string?> Origins)
{
    /// <summary>Puts the lots on the shipment and tells their contracts what is on board and what has arrived.</summary>
    /// <exception cref="RuleBrokenException">A lot is on no such contract, nothing is left on it, or a breach has no reason.</exception>
    public void Enter(Shipment shipment, IEnumerable<LadingLine> lines, string? reason, Id<Person> by, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        foreach (var line in lines)
        {
            var contract = Contracts.FirstOrDefault(one => one.Lots.Any(lot => lot.Id == line.ContractLotId));
            Rule.Require(contract is not null, "A lot is on no contract any more: open the contract and choose its lots again.", nameof(Shipment.Lots));
            shipment.Carry(contract, line.ContractLotId, line.Bags, line.Net);
        }

        Rule.Require(shipment.Lots.Count > 0, "Put at least one lot on the shipment.", nameof(Shipment.Lots));
        foreach (var contract in Contracts)
        {
            shipment.Board(contract, Shipments, reason, by, at);
            GoodsReceived.Tell(contract, [.. Shipments.Where(other => other.Id != shipment.Id), shipment], Arrivals, by, at);
        }

        ListDocuments(shipment);
    }

    /// <summary>Lists the documents that the house asks for with what the shipment carries.</summary>
    public void ListDocuments(Shipment shipment)
    {
        ArgumentNullException.ThrowIfNull(shipment);
        shipment.ListDocuments(Rules, [.. shipment.Lots.Select(lot => CaseOf(lot, shipment))]);
    }

    private DocumentCase CaseOf(ShipmentLot lot, Shipment shipment)
    {
        var terms = Contracts.First(contract => contract.Id == lot.ContractId).Terms;
        return new DocumentCase(terms.Delivery.Incoterm, Origins.GetValueOrDefault(lot.LotId) ?? UnLocode.Of(shipment.PortOfLoading).Country, UnLocode.Of(shipment.PortOfDestination).Country, terms.Certificates);
    }
}

/// <summary>A shipment of a list.</summary>
/// <param name="DaysLate">On board after the earliest end of its contracts' periods; null while it has not sailed.</param>
/// <param name="BagsLeft">Of the lots it carries, what their contracts have not shipped on any shipment.</param>
/// <param name="Left">Net weight of those.</param>
public sealed record ShipmentRow(Shipment Shipment, IReadOnlyList<Contract> Contracts, int? DaysLate, int BagsLeft, Weight Left);

/// <summary>Reads shipments with what belongs to them.</summary>
public sealed class ShipmentQuery(LedgerContext db)
{
    /// <summary>The newest number first.</summary>
    public async Task<IReadOnlyList<ShipmentRow>> ListAsync(string? text, int skip, int take, CancellationToken cancellationToken) => await RowsAsync(
        await db.Shipments.AsNoTracking().Holding(text).Whole().OrderByDescending(shipment => shipment.Ref).Skip(skip).Take(take).ToListAsync(cancellationToken), cancellationToken);

    /// <summary>Null when there is no such shipment.</summary>
    public async Task<ShipmentRow?> FindAsync(Id<Shipment> id, CancellationToken cancellationToken) =>
        await db.Shipments.AsNoTracking().Whole().SingleOrDefaultAsync(shipment => shipment.Id == id, cancellationToken) is { } found
            ? (await RowsAsync([found], cancellationToken))[0]
            : null;

    /// <summary>The contracts of lots that stand on a shipment or are put on it.</summary>
    public async Task<Lading> LadingAsync(Shipment? shipment, IReadOnlyCollection<Id<ContractLot>> lots, CancellationToken cancellationToken)
    {
        var known = (shipment?.Lots ?? []).Select(lot => lot.ContractLotId).Concat(lots).ToHashSet();
        var contracts = await db.Contracts.Whole().Where(contract => contract.Lots.Any(lot => known.Contains(lot.Id))).ToListAsync(cancellationToken);
        var (parts, arrivals) = await PartsAsync(contracts.ConvertAll(contract => contract.Id), cancellationToken);
        var grown = contracts.SelectMany(contract => contract.Lots).Select(lot => lot.LotId).ToHashSet();
        return new Lading(
            contracts,
            parts,
            arrivals,
            await db.DocumentRules.AsNoTracking().Where(rule => rule.IsInUse).OrderBy(rule => rule.Position).ToListAsync(cancellationToken),
            await db.Lots.AsNoTracking().Where(lot => grown.Contains(lot.Id)).ToDictionaryAsync(lot => lot.Id, lot => lot.CountryCode, cancellationToken));
    }

    /// <summary>All shipments that carry lots of the contracts, and what came of them.</summary>
    public async Task<(IReadOnlyList<Shipment> Shipments, IReadOnlyList<Arrival> Arrivals)> PartsAsync(IReadOnlyCollection<Id<Contract>> contracts, CancellationToken cancellationToken)
    {
        var shipments = await db.Shipments.AsNoTracking().OfContracts(contracts).Whole().OrderBy(shipment => shipment.Ref).ToListAsync(cancellationToken);
        var ids = shipments.ConvertAll(shipment => shipment.Id);
        return (shipments, await db.Arrivals.AsNoTracking().Where(arrival => ids.Contains(arrival.ShipmentId)).ToListAsync(cancellationToken));
    }

    private async Task<IReadOnlyList<ShipmentRow>> RowsAsync(IReadOnlyList<Shipment> shipments, CancellationToken cancellationToken)
    {
        var ids = shipments.SelectMany(shipment => shipment.Lots).Select(lot => lot.ContractId).ToHashSet();
        var contracts = await db.Contracts.AsNoTracking().Whole().Where(contract => ids.Contains(contract.Id)).ToListAsync(cancellationToken);
        var progress = await ProgressAsync(contracts, cancellationToken);
        return [.. shipments.Select(shipment =>
        {
            var mine = contracts.FindAll(contract => shipment.Lots.Any(lot => lot.ContractId == contract.Id));
            var lots = mine.SelectMany(contract => progress[contract.Id].Lots).Where(lot => shipment.Lots.Any(one => one.ContractLotId == lot.Lot.Id)).ToList();
            return new ShipmentRow(
                shipment, mine, mine.Max(contract => shipment.DaysLate(contract.ShipUntil)), lots.Sum(lot => lot.BagsLeft), lots.Aggregate(Weight.Zero, (sum, lot) => sum + lot.Left));
        })];
    }

    /// <summary>What of each contract is on board, received and left.</summary>
    public async Task<IReadOnlyDictionary<Id<Contract>, ContractProgress>> ProgressAsync(IReadOnlyCollection<Contract> contracts, CancellationToken cancellationToken)
    {
        var (shipments, arrivals) = await PartsAsync([.. contracts.Select(contract => contract.Id)], cancellationToken);
        var received = arrivals.Select(arrival => arrival.ShipmentLotId).ToHashSet();
        return contracts.ToDictionary(contract => contract.Id, contract => ContractProgress.Of(contract, shipments, received));
    }
}
