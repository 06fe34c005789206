using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Offers;

public sealed class ListModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<OfferList> Id { get; set; }

    public OfferList List { get; private set; } = null!;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        var list = await db.OfferLists.AsNoTracking().Include(one => one.SetAside).SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (list is null)
        {
            return NotFound();
        }

        List = list;
        return Page();
    }

    public async Task<IActionResult> OnGetFileAsync(CancellationToken cancellationToken)
    {
        var fileId = await db.OfferLists.Where(one => one.Id == Id).Select(one => one.StoredFileId).SingleOrDefaultAsync(cancellationToken);
        var file = await db.StoredFiles.AsNoTracking().Include(one => one.Content).SingleOrDefaultAsync(one => one.Id == fileId, cancellationToken);
        return file is null ? NotFound() : File(file.Content!.Bytes, "application/octet-stream", file.Name);
    }
}
