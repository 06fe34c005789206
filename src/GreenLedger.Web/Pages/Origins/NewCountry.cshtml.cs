using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Origins;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

public sealed class NewCountryModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public CountryForm Input { get; set; } = new();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var country = new Country(Input.Code ?? "", Input.Name ?? "");
        Input.Describe(country);
        Rule.Require(
            !await db.Countries.AnyAsync(one => one.Code == country.Code, cancellationToken),
            $"{country.Code} is in the list already: open it there.",
            nameof(country.Code));
        db.Add(country);
        await db.SaveChangesAsync(cancellationToken);
        Say("The country is added.");
        return RedirectToPage("Countries");
    }
}
