using GreenLedger.Data.Choosing;
using GreenLedger.Domain;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Contracts;

/// <summary>What a contract can be drafted from: a decision to buy, and what else was bought of the same supplier and stands on no contract yet.</summary>
/// <param name="Bought">The lot of the decision.</param>
/// <param name="Others">Further lots that could go on the same contract.</param>
/// <param name="Forms">The standard forms in use, by name.</param>
public sealed record DraftBasis(string House, Supplier Supplier, BoughtLot Bought, IReadOnlyList<BoughtLot> Others, IReadOnlyList<StandardForm> Forms);

/// <summary>Reads what a draft begins with, and which contracts a decision has led to.</summary>
public sealed class DraftBasisQuery(LedgerContext db)
{
    /// <summary>Both null when there is no such decision; a sentence that says why where it leads to no contract.</summary>
    public async Task<(DraftBasis? Basis, string? Trouble)> FindAsync(Id<Decision> id, CancellationToken cancellationToken)
    {
        if (await db.Decisions.AsNoTracking().SingleOrDefaultAsync(one => one.Id == id, cancellationToken) is not { } decision)
        {
            return (null, null);
        }

        if (decision is not { Outcome: Outcome.Buy, IsWithdrawn: false })
        {
            return (null, "Only a decision to buy that stands leads to a contract.");
        }

        if (await ContractOfAsync(id, cancellationToken) is { } earlier)
        {
            return (null, $"This decision stands on contract {earlier.Ref} already.");
        }

        var supplierId = await db.Offers.Where(offer => offer.Id == decision.OfferId).Select(offer => offer.SupplierId).SingleAsync(cancellationToken);
        var bought = await OfSupplierAsync(supplierId, cancellationToken);
        return (new DraftBasis(
            await db.Houses.Select(house => house.Name).SingleAsync(cancellationToken),
            await db.Suppliers.AsNoTracking().SingleAsync(supplier => supplier.Id == supplierId, cancellationToken),
            bought.First(one => one.Decision.Id == id),
            [.. bought.Where(one => one.Decision.Id != id && one.Lot.Id != decision.LotId).DistinctBy(one => one.Lot.Id)],
            await FormsAsync(cancellationToken)), null);
    }

    /// <summary>The contract that a decision stands on, cancelled ones left out; null where there is none.</summary>
    public Task<Contract?> ContractOfAsync(Id<Decision> id, CancellationToken cancellationToken) => db.Contracts.AsNoTracking()
        .Where(contract => contract.Goods != GoodsState.Cancelled && contract.Lots.Any(lot => lot.DecisionId == id))
        .OrderBy(contract => contract.Ref).FirstOrDefaultAsync(cancellationToken);

    public async Task<IReadOnlyList<StandardForm>> FormsAsync(CancellationToken cancellationToken) =>
        await db.StandardForms.AsNoTracking().Where(form => form.IsInUse).OrderBy(form => form.Name).ThenBy(form => form.Edition).ToListAsync(cancellationToken);

    /// <summary>Decisions to buy of a supplier that stand on no contract, the newest first.</summary>
    private async Task<IReadOnlyList<BoughtLot>> OfSupplierAsync(Id<Supplier> supplierId, CancellationToken cancellationToken)
    {
        var rows = await db.Decisions.AsNoTracking().Standing().Where(decision => decision.Outcome == Outcome.Buy)
            .Where(decision => !db.Contracts.Any(contract => contract.Goods != GoodsState.Cancelled && contract.Lots.Any(lot => lot.DecisionId == decision.Id)))
            .Join(db.Offers.Where(offer => offer.SupplierId == supplierId), decision => decision.OfferId, offer => offer.Id, (decision, offer) => new { decision, offer })
            .Join(db.Lots, row => row.offer.LotId, lot => lot.Id, (row, lot) => new { row.decision, row.offer, lot })
            .OrderByDescending(row => row.decision.At)
            .ToListAsync(cancellationToken);
        return [.. rows.Select(row => new BoughtLot(row.decision, row.lot, row.offer))];
    }
}
