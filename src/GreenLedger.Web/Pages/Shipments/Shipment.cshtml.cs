using GreenLedger.Data;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Papers;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Shipments;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Shipments;

/// <summary>One shipment: its passage, containers, and each lot until it is received.</summary>
public sealed class ShipmentModel(LedgerContext db, ShipmentQuery query) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Shipment> Id { get; set; }

    /// <summary>A document that is to be added to the checklist.</summary>
    [BindProperty]
    public string? Name { get; set; }

    public Shipment Found { get; private set; } = null!;

    public IReadOnlyDictionary<Id<Contract>, Contract> Contracts { get; private set; } = new Dictionary<Id<Contract>, Contract>();

    /// <summary>What of each contract is on board and left, over all of its shipments.</summary>
    public IReadOnlyDictionary<Id<Contract>, ContractProgress> Progress { get; private set; } = new Dictionary<Id<Contract>, ContractProgress>();

    public IReadOnlyDictionary<Id<Lot>, Lot> Lots { get; private set; } = new Dictionary<Id<Lot>, Lot>();

    /// <summary>By the lot of the shipment.</summary>
    public IReadOnlyDictionary<Id<ShipmentLot>, Arrival> Arrivals { get; private set; } = new Dictionary<Id<ShipmentLot>, Arrival>();

    /// <summary>The names of files that stand for documents and were not removed.</summary>
    public IReadOnlyDictionary<Id<Attachment>, string> Files { get; private set; } = new Dictionary<Id<Attachment>, string>();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Page();
    }

    /// <summary>Lists what the house asks for by now.</summary>
    public Task<IActionResult> OnPostListDocumentsAsync(CancellationToken cancellationToken) => ChangeAsync(async shipment =>
    {
        var lading = await query.LadingAsync(shipment, [], cancellationToken);
        lading.ListDocuments(shipment);
        return "The documents are listed by the house’s rules; what you did about them stands.";
    }, cancellationToken);

    public Task<IActionResult> OnPostAddDocumentAsync(CancellationToken cancellationToken) =>
        ChangeAsync(shipment => Task.FromResult($"“{shipment.AddDocument(Name).Name}” is in the checklist."), cancellationToken);

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.Shipments.AnyAsync(shipment => shipment.Id == Id, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Found = await db.Shipments.AsNoTracking().Whole().SingleAsync(shipment => shipment.Id == Id, cancellationToken);
        var contracts = Found.Lots.Select(lot => lot.ContractId).ToList();
        var lots = Found.Lots.Select(lot => lot.LotId).ToList();
        Contracts = await db.Contracts.AsNoTracking().Whole().Where(contract => contracts.Contains(contract.Id)).ToDictionaryAsync(contract => contract.Id, cancellationToken);
        Progress = await query.ProgressAsync([.. Contracts.Values], cancellationToken);
        Lots = await db.Lots.AsNoTracking().Where(lot => lots.Contains(lot.Id)).ToDictionaryAsync(lot => lot.Id, cancellationToken);
        Arrivals = await db.Arrivals.AsNoTracking().Where(arrival => arrival.ShipmentId == Id).ToDictionaryAsync(arrival => arrival.ShipmentLotId, cancellationToken);
        Files = await db.Attachments.AsNoTracking().On(PapersOf.Shipment, Id.Value).Where(file => file.RemovedAt == null).ToDictionaryAsync(file => file.Id, file => file.FileName, cancellationToken);
    }

    private async Task<IActionResult> ChangeAsync(Func<Shipment, Task<string>> act, CancellationToken cancellationToken)
    {
        var shipment = await db.Shipments.Whole().SingleAsync(one => one.Id == Id, cancellationToken);
        var said = await act(shipment);
        await db.SaveChangesAsync(cancellationToken);
        Say(said);
        return RedirectToPage(new { Id });
    }
}
