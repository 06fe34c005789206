using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Trace;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Trace;

/// <summary>By what names coffee is told to others.</summary>
public sealed class NamesModel(LedgerContext db) : FormPage
{
    [BindProperty]
    public NamesForm Input { get; set; } = new();

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        var names = await db.ExchangeNames.AsNoTracking().OfHouseAsync(cancellationToken);
        Input = new NamesForm { Version = names.Version, WebAddress = names.WebAddress, CompanyPrefix = names.CompanyPrefix, ItemReference = names.ItemReference, Gln = names.Gln };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var names = await db.ToChangeAsync<ExchangeNames>(Input.Version, cancellationToken);
        names.State(Input.WebAddress, Input.CompanyPrefix, Input.ItemReference, Input.Gln);
        await db.SaveChangesAsync(cancellationToken);
        Say("Coffee is told to others by these names from now on.");
        return RedirectToPage();
    }

    public sealed class NamesForm
    {
        public int Version { get; set; }

        [Display(Name = "Web address")]
        public string? WebAddress { get; set; }

        [Display(Name = "GS1 company prefix")]
        public string? CompanyPrefix { get; set; }

        [Display(Name = "Item reference")]
        public string? ItemReference { get; set; }

        [Display(Name = "Location number of the house (GLN)")]
        public string? Gln { get; set; }
    }
}
