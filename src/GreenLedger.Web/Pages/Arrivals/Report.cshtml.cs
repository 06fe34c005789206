using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Arrivals;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Arrivals;

/// <summary>What the supplier hears of an arrival: previewed in their language, then taken as a PDF or sent by mail.</summary>
internal sealed class ReportModel(LedgerContext db, ArrivalReports reports) : FormPage
{
    /// <summary>The arrival.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<Arrival> Id { get; set; }

    /// <summary>ISO 639-1; that of the supplier where none is chosen.</summary>
    [BindProperty(SupportsGet = true)]
    [RegularExpression("en|es|pt|fr", ErrorMessage = "Choose one of the languages.")]
    public string? Language { get; set; }

    public ArrivalReport Report { get; private set; } = null!;

    public static IReadOnlyList<(string Code, string Word)> Languages { get; } = [("en", "English"), ("es", "Spanish"), ("pt", "Portuguese"), ("fr", "French")];

    public string Shown => FeedbackText.Languages.Contains(Report.Language) ? Report.Language! : "en";

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Page();
    }

    /// <summary>The PDF; a buyer's choice of language is kept for the supplier.</summary>
    public async Task<IActionResult> OnPostPdfAsync(CancellationToken cancellationToken)
    {
        var found = await FindAsync(cancellationToken);
        await reports.KeepLanguageAsync(found.Supplier, Language, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        var file = new MemoryStream();
        ArrivalPdf.Write(found.Report, file);
        file.Position = 0;
        return File(file, ArrivalPdf.MediaType, found.Report.FileName + ".pdf");
    }

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) => db.Arrivals.AnyAsync(arrival => arrival.Id == Id, cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Report = (await FindAsync(cancellationToken)).Report;

    private async Task<(ArrivalReport Report, Id<Supplier> Supplier)> FindAsync(CancellationToken cancellationToken) =>
        (await reports.FindAsync(Id, FeedbackText.Languages.Contains(Language) ? Language : null, null, User.PersonName(), cancellationToken))!.Value;
}
