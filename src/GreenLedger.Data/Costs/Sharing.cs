using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Shipments;

namespace GreenLedger.Data.Costs;

/// <summary>Who shares in a posting: the lots of its contract or shipment, as shipped where they were, else as contracted.</summary>
/// <param name="arrived">What arrived of a lot with a shipment, as shipped.</param>
internal sealed class Sharing(IReadOnlyList<Contract> contracts, IReadOnlyList<Shipment> shipments, ILookup<(Id<Shipment>, Id<Lot>), Weight> arrived, ExchangeRates rates, Currency house)
{
    public IEnumerable<(Id<Lot> LotId, CostPosting Posting, Money Part)> Of(CostPosting posting)
    {
        if (posting.LotId is { } lot)
        {
            return [(lot, posting, posting.House)];
        }

        var sharers = SharersOf(posting).Where(sharer => sharer.Weight > Weight.Zero).ToList();
        var basis = sharers.TrueForAll(sharer => sharer.Value > 0m) ? posting.Basis : ShareBasis.Weight;
        return sharers.Count == 0 ? [] : sharers.Zip(CostAllocation.Of(posting.House, basis, sharers), (sharer, part) => (sharer.LotId, posting, part));
    }

    /// <summary>
    /// What of a lot's part of a bill on its shipment or contract is for kilograms that were shipped and have not arrived, by their
    /// shipped weight. A bill on the lot itself, and a settled claim, are for what has landed (common practice, no source).
    /// </summary>
    public Money ComingOf(CostPosting posting, Id<Lot> lotId, Money part)
    {
        if (posting.LotId is not null || posting.ClaimId is not null)
        {
            return Money.Zero(part.Currency);
        }

        var ways = shipments.Where(shipment => posting.ShipmentId is null || shipment.Id == posting.ShipmentId)
            .Select(shipment => (
                Net: Sum(shipment.Lots.Where(lot => lot.LotId == lotId && (posting.ContractId is null || lot.ContractId == posting.ContractId)).Select(lot => lot.Net)),
                Arrived: Sum(arrived[(shipment.Id, lotId)])))
            .ToList();
        var coming = ways.Sum(way => Math.Max(0L, way.Net.Micrograms - way.Arrived.Micrograms));
        var net = ways.Sum(way => way.Net.Micrograms);
        return coming == 0 ? Money.Zero(part.Currency) : part.SecondOf(net - coming, coming);
    }

    /// <summary>What of a lot bills are for: what arrived, as shipped; else what was shipped; else as contracted.</summary>
    public Weight WeightOf(Id<Lot> lotId)
    {
        var come = Sum(shipments.SelectMany(shipment => arrived[(shipment.Id, lotId)]));
        if (come > Weight.Zero)
        {
            return come;
        }

        var shipped = Sum(shipments.SelectMany(shipment => shipment.Lots).Where(lot => lot.LotId == lotId).Select(lot => lot.Net));
        return shipped > Weight.Zero ? shipped : Sum(contracts.SelectMany(contract => contract.Lots).Where(line => line.LotId == lotId).Select(line => line.Net));
    }

    private IEnumerable<CostSharer> SharersOf(CostPosting posting)
    {
        if (posting.ShipmentId is { } shipmentId)
        {
            return shipments.Where(shipment => shipment.Id == shipmentId).SelectMany(shipment => shipment.Lots)
                .Select(lot => new CostSharer(lot.LotId, lot.Net, ValueOf(contracts.First(contract => contract.Id == lot.ContractId), lot.Net, posting.On)));
        }

        var contract = contracts.First(one => one.Id == posting.ContractId);
        return contract.Lots.Select(line =>
        {
            var shipped = Sum(shipments.SelectMany(shipment => shipment.Lots).Where(lot => lot.ContractLotId == line.Id).Select(lot => lot.Net));
            var weight = shipped > Weight.Zero ? shipped : line.Net;
            return new CostSharer(line.LotId, weight, ValueOf(contract, weight, posting.On));
        });
    }

    /// <summary>At the contract's price, in the house currency; zero where it is not fixed or no rate is known: then weight shares.</summary>
    private decimal ValueOf(Contract contract, Weight weight, DateOnly on) =>
        contract.Value(weight, null)?.Value is { } value && rates.Find(value.Currency, house, on) is { } conversion ? conversion.Of(value.Amount) : 0m;

    private static Weight Sum(IEnumerable<Weight> weights) => weights.Aggregate(Weight.Zero, (sum, weight) => sum + weight);
}
