using GreenLedger.Data;
using Microsoft.AspNetCore.Mvc.Rendering;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Roasting;

/// <summary>The people who may have roasted a batch.</summary>
internal static class Roasters
{
    public static async Task<IReadOnlyList<SelectListItem>> RoastersAsync(this LedgerContext db, CancellationToken cancellationToken) =>
        [.. (await db.People.AsNoTracking().OrderBy(person => person.Name).ToListAsync(cancellationToken)).Select(person => new SelectListItem(person.Name, person.Id.ToString()))];
}
