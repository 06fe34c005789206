using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

public sealed class SupplierModel(LedgerContext db, OfferQuery offers) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Supplier> Id { get; set; }

    public Supplier Supplier { get; private set; } = null!;

    public IReadOnlyList<OfferRow> Offers { get; private set; } = [];

    public IReadOnlyList<OfferList> Lists { get; private set; } = [];

    public IReadOnlyList<SupplierContact> Contacts { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public async Task<IActionResult> OnGetAsync([FromQuery(Name = "pageNumber")] int number, CancellationToken cancellationToken)
    {
        var supplier = await db.Suppliers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (supplier is null)
        {
            return NotFound();
        }

        Supplier = supplier;
        var filter = new OfferFilter(Supplier: Id);
        Paging = Paging.Of(number, await offers.CountAsync(filter, cancellationToken), "offer", "offers");
        Offers = await offers.ListAsync(filter, null, Paging.Skip, Paging.Size, cancellationToken);
        Lists = await db.OfferLists.AsNoTracking().Where(list => list.SupplierId == Id)
            .OrderByDescending(list => list.ReceivedOn).Take(20).ToListAsync(cancellationToken);
        Contacts = await db.SupplierContacts.AsNoTracking().Of(Id).ToListAsync(cancellationToken);
        return Page();
    }
}
