using GreenLedger.Data;
using GreenLedger.Domain.Origins;
using GreenLedger.Web.Origins;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Origins;

public sealed class NewCountryModel(LedgerContext db, OriginActs acts) : FormPage
{
    [BindProperty]
    public CountryForm Input { get; set; } = new();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var country = new Country(Input.Code ?? "", Input.Name ?? "");
        Input.Describe(country);
        await acts.AddAsync(country, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say("The country is added.");
        return RedirectToPage("Countries");
    }
}
