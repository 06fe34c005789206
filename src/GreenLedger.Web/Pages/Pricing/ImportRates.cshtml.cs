using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Pricing;
using GreenLedger.Documents.Pricing;
using GreenLedger.Domain;
using GreenLedger.Domain.Pricing;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Pricing;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Pricing;

public sealed class ImportRatesModel(LedgerContext db, HouseZone house, TimeProvider clock) : FormPage
{
    [BindProperty]
    public ImportForm Input { get; set; } = new();

    public IReadOnlyList<Problem> Problems { get; private set; } = [];

    public void OnGet() => Input.From = house.Today.AddDays(-90);

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var read = ReferenceRateFile.Read(await Input.File!.BytesAsync(ReferenceRateFile.LargestFile, cancellationToken));
        Problems = read.Problems;
        if (Problems.Count > 0)
        {
            return Page();
        }

        var lines = read.Lines.Where(line => Input.From is null || line.On >= Input.From).ToList();
        Rule.Require(lines.Count > 0, "The file has no rates from this day on: choose an earlier day.", nameof(ImportForm.From));
        var taking = await db.ExchangeRates.TakeAsync(lines, RateKind.Market, Input.File!.SourceName(), User.FindPerson(), clock.GetUtcNow(), cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{Figures.Count(taking.Added.Count, "rate", "rates")} added, {Figures.Count(taking.Corrected)} corrected, {Figures.Count(taking.Unchanged)} known already."
            + (taking.UnknownCodes.Count > 0 ? $" Left out, being closed or unknown here: {string.Join(", ", taking.UnknownCodes)}." : ""));
        return RedirectToPage("/Pricing/Rates");
    }

    public sealed class ImportForm
    {
        [Required(ErrorMessage = "Choose the file.")]
        public IFormFile? File { get; set; }

        [Display(Name = "From day")]
        public DateOnly? From { get; set; }
    }
}
