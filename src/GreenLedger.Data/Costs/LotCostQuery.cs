using GreenLedger.Data.Contracts;
using GreenLedger.Data.People;
using GreenLedger.Data.Pricing;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Shipments;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Costs;

/// <summary>A lot that shares in a posting, and its part, in the house currency.</summary>
public sealed record PostingShare(Id<Lot> LotId, string LotRef, string LotName, CostPart Cost)
{
    public Money Part => Cost.Part;
}

/// <summary>
/// What lots truly cost: every posting on them, their shipments and their contracts, shared anew each time, so that a late bill
/// reaches every lot that it was spent on.
/// </summary>
public sealed class LotCostQuery(LedgerContext db)
{
    /// <summary>The costs of these lots, by lot; a lot without a posting has an empty one.</summary>
    public async Task<IReadOnlyDictionary<Id<Lot>, LotCost>> ListAsync(IReadOnlyCollection<Id<Lot>> lots, DateOnly? until, CancellationToken cancellationToken)
    {
        var house = await db.Houses.AsNoTracking().Select(one => one.Currency).SingleOrDefaultAsync(cancellationToken);
        var flows = await db.FlowsAsync(lots, until, cancellationToken);
        var (parts, _) = await PartsAsync(flows, until, house, cancellationToken);
        return flows.ToDictionary(lot => lot.Key, lot => LotCost.Of([.. parts[lot.Key]], lot.Value.LandedWeight, null, house));
    }

    /// <summary>The cost of a lot beside what was reckoned when it was decided on.</summary>
    public async Task<LotCost> FindAsync(Id<Lot> lotId, CancellationToken cancellationToken)
    {
        var house = await db.Houses.AsNoTracking().Select(one => one.Currency).SingleOrDefaultAsync(cancellationToken);
        var flows = await db.FlowsAsync([lotId], null, cancellationToken);
        var (parts, sharing) = await PartsAsync(flows, null, house, cancellationToken);
        var reckoned = await EstimateAsync(lotId, cancellationToken) is { } estimate ? new ReckonedCost(estimate, await RatesOnAsync(estimate.On, cancellationToken), sharing.WeightOf(lotId)) : null;
        return LotCost.Of([.. parts[lotId]], flows[lotId].LandedWeight, reckoned, house);
    }

    /// <summary>Which lots share in a posting, and with how much, as it stands now; by reference.</summary>
    public async Task<IReadOnlyList<PostingShare>> SharesAsync(CostPosting posting, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(posting);
        var lots = await LotsOf(posting).Distinct().ToListAsync(cancellationToken);
        var house = await db.Houses.AsNoTracking().Select(one => one.Currency).SingleOrDefaultAsync(cancellationToken);
        var (parts, _) = await PartsAsync(await db.FlowsAsync(lots, null, cancellationToken), null, house, cancellationToken);
        var named = await db.Lots.AsNoTracking().Where(lot => lots.Contains(lot.Id)).OrderBy(lot => lot.Ref).Select(lot => new { lot.Id, lot.Ref, lot.Name }).ToListAsync(cancellationToken);
        return [.. from lot in named from part in parts[lot.Id] where part.Posting.Id == posting.Id select new PostingShare(lot.Id, lot.Ref, lot.Name, part)];
    }

    private IQueryable<Id<Lot>> LotsOf(CostPosting posting) =>
        posting.LotId is { } lot ? db.Lots.Where(one => one.Id == lot).Select(one => one.Id)
        : posting.ShipmentId is { } shipment ? db.Shipments.Where(one => one.Id == shipment).SelectMany(one => one.Lots).Select(one => one.LotId)
        : db.ContractLots.Where(one => db.Contracts.Any(contract => contract.Id == posting.ContractId && contract.Lots.Contains(one))).Select(one => one.LotId);

    /// <summary>On the rates, quotes and routes of the day of the decision to buy; null where nobody decided.</summary>
    private async Task<LandedCost?> EstimateAsync(Id<Lot> lotId, CancellationToken cancellationToken)
    {
        var decision = await db.Decisions.AsNoTracking().Where(one => one.LotId == lotId && one.WithdrawnAt == null && one.Quantity != null)
            .OrderByDescending(one => one.At).FirstOrDefaultAsync(cancellationToken);
        if (decision is null)
        {
            return null;
        }

        var offer = await db.Offers.AsNoTracking().Include(one => one.Prices).SingleAsync(one => one.Id == decision.OfferId, cancellationToken);
        var country = await db.Lots.Where(lot => lot.Id == lotId).Select(lot => lot.CountryCode).SingleAsync(cancellationToken);
        var costs = await new LandedCostsQuery(db).FindAsync((await db.ZoneAsync(cancellationToken)).Day(decision.At), cancellationToken);
        return costs?.Of(Parcel.Of(offer, country));
    }

    private async Task<ExchangeRates> RatesOnAsync(DateOnly on, CancellationToken cancellationToken) =>
        new(await db.ExchangeRates.HoldingOn(RateKind.Market, on).AsNoTracking().ToListAsync(cancellationToken));

    private async Task<(ILookup<Id<Lot>, CostPart> Parts, Sharing Sharing)> PartsAsync(IReadOnlyDictionary<Id<Lot>, LotFlow> flows, DateOnly? until, Currency house, CancellationToken cancellationToken)
    {
        var lots = flows.Keys.ToList();
        var contracts = await db.Contracts.AsNoTracking().Whole().Where(contract => contract.Lots.Any(lot => lots.Contains(lot.LotId))).ToListAsync(cancellationToken);
        var contractIds = contracts.ConvertAll(contract => contract.Id);
        var shipments = await db.Shipments.AsNoTracking().Whole()
            .Where(shipment => shipment.Lots.Any(lot => lots.Contains(lot.LotId) || contractIds.Contains(lot.ContractId))).ToListAsync(cancellationToken);
        var others = shipments.SelectMany(shipment => shipment.Lots).Select(lot => lot.ContractId).Except(contractIds).ToList();
        contracts.AddRange(await db.Contracts.AsNoTracking().Whole().Where(contract => others.Contains(contract.Id)).ToListAsync(cancellationToken));
        var shipmentIds = shipments.ConvertAll(shipment => (Id<Shipment>?)shipment.Id);
        var nullable = contractIds.ConvertAll(id => (Id<Contract>?)id);
        var postings = await db.CostPostings.AsNoTracking()
            .Where(posting => posting.WithdrawnAt == null && (until == null || posting.On <= until)
                && (lots.Contains(posting.LotId!.Value) || shipmentIds.Contains(posting.ShipmentId) || nullable.Contains(posting.ContractId)))
            .OrderBy(posting => posting.On).ThenBy(posting => posting.Id).ToListAsync(cancellationToken);
        var rates = new ExchangeRates(await RatesAsync(contracts, house, cancellationToken));
        var arrived = (await db.Arrivals.Where(arrival => shipmentIds.Contains(arrival.ShipmentId) && (until == null || arrival.ReceivedOn <= until))
            .Select(arrival => new { arrival.ShipmentId, arrival.LotId, arrival.Shipped }).ToListAsync(cancellationToken)).ToLookup(one => (one.ShipmentId, one.LotId), one => one.Shipped);
        var sharing = new Sharing(contracts, shipments, arrived, rates, house);
        return (postings.SelectMany(sharing.Of).Where(part => flows.ContainsKey(part.LotId)).ToLookup(part => part.LotId, part => PartOf(part.Posting, part.LotId, part.Part)), sharing);

        // While nothing of a lot has landed, no kilogram bears its cost yet, and none is set apart.
        CostPart PartOf(CostPosting posting, Id<Lot> lot, Money part) =>
            CostPart.Of(posting, part, flows[lot], flows[lot].LandedWeight > Weight.Zero ? sharing.ComingOf(posting, lot, part) : null);
    }

    private async Task<List<ExchangeRate>> RatesAsync(List<Contract> contracts, Currency house, CancellationToken cancellationToken)
    {
        var currencies = contracts.ConvertAll(contract => contract.Terms.Price.Outright?.Currency ?? Currency.Usd).Append(house).Distinct().ToList();
        return await db.ExchangeRates.AsNoTracking().Where(rate => currencies.Contains(rate.Currency)).ToListAsync(cancellationToken);
    }
}
