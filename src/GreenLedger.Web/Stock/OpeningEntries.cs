using GreenLedger.Data;
using GreenLedger.Data.Stock;
using GreenLedger.Domain;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Stock;

namespace GreenLedger.Web.Stock;

/// <summary>Writes opening stock from a file down: a movement for each lot and warehouse, and what it cost as a posting on the lot. Whoever calls saves.</summary>
internal sealed class OpeningEntries(LedgerContext db, Currency house, Id<Person> by, DateTimeOffset at)
{
    private readonly Dictionary<(Id<Lot>, Id<Warehouse>), Holding> _holdings = [];

    /// <param name="lotId">A lot of the ledger, or one that was just added.</param>
    /// <param name="warehouse">Where it lies.</param>
    /// <param name="amount">What lies there.</param>
    /// <param name="note">The day, the document, and where the figures come from.</param>
    /// <param name="cost">What all of it cost; null where it is not known.</param>
    /// <param name="cancellationToken">Stops the reading.</param>
    public async Task AddAsync(Id<Lot> lotId, Id<Warehouse> warehouse, StockAmount amount, MovementNote note, Invoice? cost, CancellationToken cancellationToken)
    {
        if (!_holdings.TryGetValue((lotId, warehouse), out var holding))
        {
            _holdings[(lotId, warehouse)] = holding = await db.HoldingAsync(lotId, warehouse, cancellationToken);
        }

        db.Add(holding.Add(MovementKind.Opening, amount, note, by, at));
        if (cost is not null)
        {
            db.Add(new CostPosting(new PostedOn(null, null, lotId), cost, house, by, at));
        }
    }
}
