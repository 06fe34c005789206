using GreenLedger.Data;
using GreenLedger.Data.Certificates;
using GreenLedger.Domain.Certificates;
using GreenLedger.Web.Display;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Certificates;

/// <summary>Certificates of producers, suppliers and the house, those that ended left out unless they are asked for.</summary>
public sealed class IndexModel(LedgerContext db, CertificateQuery query, HouseZone house) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Scheme { get; set; }

    [BindProperty(SupportsGet = true)]
    public bool Ended { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public IReadOnlyList<HeldCertificate> Held { get; private set; } = [];

    public IReadOnlyList<string> Schemes { get; private set; } = [];

    public CertificateHabits Habits { get; private set; } = new();

    public Paging Paging { get; private set; } = null!;

    public DateOnly Today => house.Today;

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        Schemes = await db.Certificates.Select(one => one.Scheme).Distinct().OrderBy(scheme => scheme).ToListAsync(cancellationToken);
        Habits = await db.CertificateHabits.AsNoTracking().OfHouseAsync(cancellationToken);
        var all = await query.ListAsync(string.IsNullOrEmpty(Scheme) ? null : Scheme, Ended ? null : Today, cancellationToken);
        Paging = Paging.Of(PageNumber, all.Count, "certificate", "certificates");
        Held = [.. all.Skip(Paging.Skip).Take(Paging.Size)];
    }
}
