using GreenLedger.Data;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Origins;

public sealed class EditCountryModel(LedgerContext db) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public string Country { get; set; } = "";

    [BindProperty]
    public CountryForm Input { get; set; } = new();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await CountryAsync(cancellationToken) is not { } country)
        {
            return NotFound();
        }

        Input = CountryForm.Of(country);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await CountryAsync(cancellationToken) is not { } country)
        {
            return NotFound();
        }

        OpenedOn(country, Input.Version);
        Input.Describe(country);
        await db.SaveChangesAsync(cancellationToken);
        Say("The country is changed.");
        return RedirectToPage("Countries");
    }

    private Task<Domain.Origins.Country?> CountryAsync(CancellationToken cancellationToken) =>
        db.Countries.SingleOrDefaultAsync(one => one.Code == Country, cancellationToken);
}
