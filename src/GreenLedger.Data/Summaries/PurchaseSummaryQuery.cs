using GreenLedger.Data.Contracts;
using GreenLedger.Data.Costs;
using GreenLedger.Data.Pricing;
using GreenLedger.Data.Shipments;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Summaries;

/// <summary>Reads across the rooms what a purchase summary adds up.</summary>
public sealed class PurchaseSummaryQuery(LedgerContext db, FixingsQuery fixings)
{
    /// <summary>Null while no house is set up.</summary>
    /// <param name="wish">The period, by what it is parted, and of which group.</param>
    /// <param name="today">The day by which what is open is told.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task<PurchaseSummary?> FindAsync(SummaryWish wish, DateOnly today, CancellationToken cancellationToken)
    {
        ArgumentNullException.ThrowIfNull(wish);
        return await FactsAsync(wish.Period, today, cancellationToken) is { } facts ? PurchaseSummary.Of(facts, wish) : null;
    }

    private async Task<SummaryFacts?> FactsAsync(Period period, DateOnly today, CancellationToken cancellationToken)
    {
        if (await db.Houses.AsNoTracking().SingleOrDefaultAsync(cancellationToken) is not { } house)
        {
            return null;
        }

        var bands = await db.QualityBands.AsNoTracking().OfHouseAsync(cancellationToken);
        var contracts = await ContractsAsync(period.Before.From, cancellationToken);
        var (quotes, newest) = await QuotesAsync(period, today, cancellationToken);
        var rates = await RatesAsync(house.Currency, contracts, cancellationToken);
        var valuation = new Valuation(house.Currency, today, new ExchangeRates(rates), newest);
        var scores = await new LotScores(db, bands.FormId).ReadAsync(cancellationToken);
        var zone = ClockZone.Of(house.TimeZone);
        var calendar = await fixings.CalendarAsync(cancellationToken);
        var approvalDays = (await db.DueHabits.AsNoTracking().OfHouseAsync(cancellationToken)).ApprovalDays;
        return new SummaryFacts(
            valuation,
            bands,
            await LotsAsync(contracts, valuation, scores, cancellationToken),
            await OfferedAsync(period, scores, cancellationToken),
            quotes,
            [.. contracts.SelectMany(contract => ToDecide.Of(contract, calendar, today, zone, approvalDays))],
            await StockAsync(today, scores, cancellationToken),
            await db.ExchangeRates.Where(rate => rate.Kind == RateKind.Market).MaxAsync(rate => (DateOnly?)rate.On, cancellationToken));
    }

    /// <summary>Signed and not cancelled: those that are open, and those of which something happened since a day.</summary>
    private async Task<IReadOnlyList<Contract>> ContractsAsync(DateOnly since, CancellationToken cancellationToken) => await db.Contracts.AsNoTracking().Whole()
        .Where(contract => contract.Goods != GoodsState.Drafted && contract.Goods != GoodsState.Cancelled)
        .Where(contract => contract.Goods != GoodsState.Closed || contract.Versions.Any(version => version.SignedOn >= since) || contract.Moves.Any(move => move.On >= since))
        .OrderBy(contract => contract.Ref).ToListAsync(cancellationToken);

    private async Task<IReadOnlyList<PurchasedLot>> LotsAsync(IReadOnlyList<Contract> contracts, Valuation valuation, LotScores scores, CancellationToken cancellationToken)
    {
        var ids = contracts.Select(contract => contract.Id).ToList();
        var shipments = await db.Shipments.AsNoTracking().Whole().Where(shipment => shipment.Lots.Any(lot => ids.Contains(lot.ContractId))).ToListAsync(cancellationToken);
        var shipped = shipments.ConvertAll(shipment => shipment.Id);
        var arrivals = await db.Arrivals.AsNoTracking().Where(arrival => shipped.Contains(arrival.ShipmentId)).ToListAsync(cancellationToken);
        var claims = (await db.Claims.AsNoTracking().Where(claim => ids.Contains(claim.ContractId)).OrderBy(claim => claim.Ref).ToListAsync(cancellationToken)).ToLookup(claim => claim.ContractId);
        var lots = contracts.SelectMany(contract => contract.Lots.Select(lot => lot.LotId)).Distinct().ToList();
        var facts = await FactsAsync(db.Lots.AsNoTracking().Where(lot => lots.Contains(lot.Id)), cancellationToken);
        var costs = await new LotCostQuery(db).ListAsync(lots, null, cancellationToken);
        var sellers = contracts.Select(contract => contract.SupplierId).Distinct().ToList();
        var names = await db.Suppliers.AsNoTracking().Where(supplier => sellers.Contains(supplier.Id)).ToDictionaryAsync(supplier => supplier.Id, supplier => supplier.Name, cancellationToken);
        return
        [
            .. contracts.SelectMany(contract =>
            {
                var signed = Valuation.SignedOn(contract);
                var named = contract.Lots.ToDictionary(
                    lot => lot.LotId,
                    lot => facts[lot.LotId] with { Supplier = names[contract.SupplierId], Score = scores.When(lot.LotId, signed), LandedPerKilogram = lot.LandedCost?.PerKilogram ?? (costs[lot.LotId] is { HasCoffee: true } cost ? cost.PerKilogram : null) });
                return new PurchaseReading(PurchaseProgress.Of(contract, shipments, arrivals), scores.OfSamples, valuation, [.. claims[contract.Id]]).Lots(named);
            }),
        ];
    }

    /// <summary>What lies in the warehouses at the end of today, by lot; its seller is that of the newest contract on it, or the lot's own.</summary>
    private async Task<IReadOnlyList<LotInStock>> StockAsync(DateOnly today, LotScores scores, CancellationToken cancellationToken)
    {
        var stock = await new ValuationQuery(db).FindAsync(today, cancellationToken);
        var parts = stock.Rows.SelectMany(row => row.Parts()).ToList();
        var ids = parts.ConvertAll(part => part.Id);
        var facts = await FactsAsync(db.Lots.AsNoTracking().Where(lot => ids.Contains(lot.Id)), cancellationToken);
        var sellers = await db.Contracts.AsNoTracking()
            .Where(contract => contract.Goods != GoodsState.Drafted && contract.Goods != GoodsState.Cancelled)
            .SelectMany(contract => contract.Lots, (contract, lot) => new { lot.LotId, contract.Ref, contract.SupplierId })
            .Where(sold => ids.Contains(sold.LotId)).ToListAsync(cancellationToken);
        var owners = await db.Lots.AsNoTracking().Where(lot => ids.Contains(lot.Id) && lot.SupplierId != null).Select(lot => new { lot.Id, lot.SupplierId }).ToListAsync(cancellationToken);
        var seller = owners.ToDictionary(lot => lot.Id, lot => lot.SupplierId!.Value);
        foreach (var sold in sellers.OrderBy(one => one.Ref, StringComparer.Ordinal))
        {
            seller[sold.LotId] = sold.SupplierId;
        }

        var named = seller.Values.Distinct().ToList();
        var names = await db.Suppliers.AsNoTracking().Where(supplier => named.Contains(supplier.Id)).ToDictionaryAsync(supplier => supplier.Id, supplier => supplier.Name, cancellationToken);
        return
        [
            .. parts.Select(part => new LotInStock(
                facts[part.Id] with { Supplier = seller.TryGetValue(part.Id, out var id) ? names[id] : Cuts.NotStated, Score = scores.Newest(part.Id) }, part.Left, part.Cost)),
        ];
    }

    private async Task<IReadOnlyList<OfferedLot>> OfferedAsync(Period period, LotScores scores, CancellationToken cancellationToken)
    {
        var rows = await db.Offers.AsNoTracking()
            .Where(offer => offer.FirstOfferedOn >= period.From && offer.FirstOfferedOn <= period.Until)
            .Where(offer => db.SampleResults.Any(result => result.LotId == offer.LotId && result.FormId == scores.FormId))
            .Join(db.Suppliers, offer => offer.SupplierId, supplier => supplier.Id, (offer, supplier) => new { offer.Id, offer.LotId, offer.FirstOfferedOn, supplier.Name })
            .ToListAsync(cancellationToken);
        var ids = rows.Select(row => row.LotId).Distinct().ToList();
        var facts = await FactsAsync(db.Lots.AsNoTracking().Where(lot => ids.Contains(lot.Id)), cancellationToken);
        return
        [
            .. rows.OrderBy(row => row.FirstOfferedOn).ThenBy(row => row.Id.Value).DistinctBy(row => row.LotId)
                .Select(row => new OfferedLot(row.Id, row.FirstOfferedOn, facts[row.LotId] with { Supplier = row.Name, Score = scores.Newest(row.LotId) })),
        ];
    }

    /// <summary>Without seller and score, which depend on who asks.</summary>
    private async Task<Dictionary<Id<Lot>, LotFacts>> FactsAsync(IQueryable<Lot> lots, CancellationToken cancellationToken)
    {
        var countries = await db.Countries.AsNoTracking().ToDictionaryAsync(country => country.Code, country => country.Name, cancellationToken);
        var methods = await db.ProcessMethods.AsNoTracking().ToDictionaryAsync(method => method.Id, method => method.Name, cancellationToken);
        return (await lots.ToListAsync(cancellationToken)).ToDictionary(lot => lot.Id, lot => new LotFacts(
            lot.Id, lot.Ref, lot.Name, "",
            lot.CountryCode is { } code ? countries.GetValueOrDefault(code, code) : null,
            lot.ProcessMethodId is { } method ? methods.GetValueOrDefault(method) : lot.ProcessAsWritten,
            lot.Certificates,
            null,
            lot.Programme));
    }

    /// <summary>The quotes of both periods, and of each month the last one up to today.</summary>
    private async Task<(IReadOnlyList<FuturesQuote> OfPeriods, FuturesQuotes Newest)> QuotesAsync(Period period, DateOnly today, CancellationToken cancellationToken) => (
        await db.FuturesQuotes.AsNoTracking().Between(period.Before.From, period.Until).ToListAsync(cancellationToken),
        new FuturesQuotes(await db.FuturesQuotes.HoldingOn(today).AsNoTracking().ToListAsync(cancellationToken)));

    /// <summary>Of the house currency, the dollar and what contracts are priced in.</summary>
    private async Task<IReadOnlyList<ExchangeRate>> RatesAsync(Currency house, IReadOnlyList<Contract> contracts, CancellationToken cancellationToken)
    {
        var currencies = contracts.Select(contract => contract.Terms.Price.Outright?.Currency).OfType<Currency>().Append(house).Append(Currency.Usd).Distinct().ToList();
        return await db.ExchangeRates.AsNoTracking().Where(rate => rate.Kind == RateKind.Market && currencies.Contains(rate.Currency)).ToListAsync(cancellationToken);
    }
}
