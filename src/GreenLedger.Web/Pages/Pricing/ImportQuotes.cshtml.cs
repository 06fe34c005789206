using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Documents.Pricing;
using GreenLedger.Domain;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Pricing;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Pricing;

public sealed class ImportQuotesModel(LedgerContext db, HouseZone house, TimeProvider clock) : FormPage
{
    [BindProperty]
    public ImportForm Input { get; set; } = new();

    public IReadOnlyList<Problem> Problems { get; private set; } = [];

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var read = FuturesQuoteTable.Read(await Input.File!.BytesAsync(FuturesQuoteTable.LargestFile, cancellationToken), house.Today);
        Problems = read.Problems;
        if (Problems.Count > 0)
        {
            return Page();
        }

        var taking = await db.FuturesQuotes.TakeAsync(read.Lines, Input.File!.SourceName(), User.FindPerson(), clock.GetUtcNow(), cancellationToken);
        Problems = taking.Problems;
        if (Problems.Count > 0)
        {
            return Page();
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"{Figures.Count(taking.Added.Count, "quote", "quotes")} added, {Figures.Count(taking.Corrected)} corrected, {Figures.Count(taking.Unchanged)} known already.");
        return RedirectToPage("/Pricing/Quotes");
    }

    public sealed class ImportForm
    {
        [Required(ErrorMessage = "Choose the file.")]
        public IFormFile? File { get; set; }
    }
}
