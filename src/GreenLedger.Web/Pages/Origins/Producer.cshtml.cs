using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

public sealed class ProducerModel(LedgerContext db) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public Id<Producer> Id { get; set; }

    public Producer Producer { get; private set; } = null!;

    public Country? Country { get; private set; }

    public IReadOnlyList<Lot> Lots { get; private set; } = [];

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        var producer = await db.Producers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Id, cancellationToken);
        if (producer is null)
        {
            return NotFound();
        }

        Producer = producer;
        Country = await db.Countries.AsNoTracking().SingleOrDefaultAsync(one => one.Code == producer.CountryCode, cancellationToken);
        if (User.MayRead("Offers"))
        {
            Lots = await db.Lots.AsNoTracking().Where(lot => lot.ProducerId == Id)
                .OrderByDescending(lot => lot.CropYear).ThenBy(lot => lot.Ref).Take(200).ToListAsync(cancellationToken);
        }

        return Page();
    }
}
