using System.Globalization;
using GreenLedger.Data;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

public sealed class CountriesModel(LedgerContext db) : PageModel
{
    public IReadOnlyList<Country> Countries { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken) =>
        Countries = await db.Countries.AsNoTracking().OrderBy(country => country.Name).ToListAsync(cancellationToken);

    public static string? Month(int? month) =>
        month is { } number ? CultureInfo.InvariantCulture.DateTimeFormat.GetAbbreviatedMonthName(number) : null;
}
