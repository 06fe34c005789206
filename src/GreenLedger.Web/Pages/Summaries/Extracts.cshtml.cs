using GreenLedger.Data.Summaries;
using GreenLedger.Domain;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using GreenLedger.Web.Summaries;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Summaries;

/// <summary>Whole tables of the ledger as a workbook or CSV, for programs and papers of the house's own.</summary>
internal sealed class ExtractsModel(ExtractQuery query, Reader reader, HouseZone zone) : PageModel
{
    [BindProperty(SupportsGet = true)]
    public string? Table { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? Search { get; set; }

    [BindProperty(SupportsGet = true)]
    public DateOnly? From { get; set; }

    [BindProperty(SupportsGet = true)]
    public DateOnly? Until { get; set; }

    /// <summary>What is wrong with the address; null for nothing.</summary>
    public string? Trouble { get; private set; }

    public Task<IActionResult> OnGetWorkbookAsync(CancellationToken cancellationToken) => SendAsync(asWorkbook: true, cancellationToken);

    public Task<IActionResult> OnGetTextAsync(CancellationToken cancellationToken) => SendAsync(asWorkbook: false, cancellationToken);

    private async Task<IActionResult> SendAsync(bool asWorkbook, CancellationToken cancellationToken)
    {
        if (!ModelState.IsValid)
        {
            Trouble = "A day cannot be read: write it as 2026-11-30.";
            return Page();
        }

        try
        {
            var file = new ExtractFile(ExtractTables.Named(Table), new ExtractFilter(Search, From, Until) { Zone = zone.Zone }, asWorkbook);
            return File(await file.WriteAsync(query, await reader.SealAsync(), cancellationToken), file.MediaType, file.NameOn(zone.Today));
        }
        catch (RuleBrokenException broken)
        {
            Trouble = broken.Message;
            return Page();
        }
    }
}
