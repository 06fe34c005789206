using GreenLedger.Data;
using GreenLedger.Data.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.People;

/// <summary>Erases the data of somebody at a supplier.</summary>
internal sealed class EraseContactModel(LedgerContext db, PersonErasure erasing, TimeProvider clock) : ErasePage(db, erasing, clock)
{
    private readonly PersonErasure _erasing = erasing;

    [BindProperty(SupportsGet = true)]
    public Id<SupplierContact> Id { get; set; }

    protected override Task<ErasedSubject?> FindAsync(CancellationToken cancellationToken) => _erasing.FindAsync(Id, cancellationToken);
}
