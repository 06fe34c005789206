using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Shipments;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Shipments;

/// <summary>One shipment: its passage, containers, and each lot until it is received.</summary>
public sealed class ShipmentModel(LedgerContext db, ShipmentQuery query) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Shipment> Id { get; set; }

    public Shipment Found { get; private set; } = null!;

    public IReadOnlyDictionary<Id<Contract>, Contract> Contracts { get; private set; } = new Dictionary<Id<Contract>, Contract>();

    /// <summary>What of each contract is on board and left, over all of its shipments.</summary>
    public IReadOnlyDictionary<Id<Contract>, ContractProgress> Progress { get; private set; } = new Dictionary<Id<Contract>, ContractProgress>();

    public IReadOnlyDictionary<Id<Lot>, Lot> Lots { get; private set; } = new Dictionary<Id<Lot>, Lot>();

    /// <summary>By the lot of the shipment.</summary>
    public IReadOnlyDictionary<Id<ShipmentLot>, Arrival> Arrivals { get; private set; } = new Dictionary<Id<ShipmentLot>, Arrival>();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await db.Shipments.AsNoTracking().Whole().SingleOrDefaultAsync(shipment => shipment.Id == Id, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        Found = found;
        var contracts = found.Lots.Select(lot => lot.ContractId).ToList();
        var lots = found.Lots.Select(lot => lot.LotId).ToList();
        Contracts = await db.Contracts.AsNoTracking().Whole().Where(contract => contracts.Contains(contract.Id)).ToDictionaryAsync(contract => contract.Id, cancellationToken);
        Progress = await query.ProgressAsync([.. Contracts.Values], cancellationToken);
        Lots = await db.Lots.AsNoTracking().Where(lot => lots.Contains(lot.Id)).ToDictionaryAsync(lot => lot.Id, cancellationToken);
        Arrivals = await db.Arrivals.AsNoTracking().Where(arrival => arrival.ShipmentId == Id).ToDictionaryAsync(arrival => arrival.ShipmentLotId, cancellationToken);
        return Page();
    }
}
