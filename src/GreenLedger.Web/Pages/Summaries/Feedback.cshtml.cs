using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Summaries;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Summaries;

/// <summary>What a supplier hears back of chosen samples: previewed, then taken as a PDF.</summary>
internal sealed class FeedbackModel(LedgerContext db, FeedbackQuery query, Reader reader, HouseZone zone) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Supplier>? Supplier { get; set; }

    [BindProperty]
    public FeedbackForm Input { get; set; } = new();

    /// <summary>Suppliers with a sample that is here, by name.</summary>
    public IReadOnlyList<(Id<Supplier> Id, string Name)> Suppliers { get; private set; } = [];

    public IReadOnlyList<TellableSample> Samples { get; private set; } = [];

    public FeedbackReport? Preview { get; private set; }

    public static IReadOnlyList<(string Code, string Word)> Languages { get; } = [("en", "English"), ("es", "Spanish"), ("pt", "Portuguese"), ("fr", "French")];

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var language = await db.Suppliers.Where(supplier => supplier.Id == Supplier).Select(supplier => supplier.Language).SingleOrDefaultAsync(cancellationToken);
        Input = new FeedbackForm { Language = FeedbackText.Languages.Contains(language) ? language! : "en", Samples = [.. Samples.Where(sample => sample.Score is not null).Take(1).Select(sample => sample.Id)] };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await ReportAsync(cancellationToken) is not { } report)
        {
            return NotFound();
        }

        Preview = report;
        await LoadAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnPostPdfAsync(CancellationToken cancellationToken)
    {
        if (await ReportAsync(cancellationToken) is not { } report)
        {
            return NotFound();
        }

        var stream = new MemoryStream();
        FeedbackPdf.Write(report, stream);
        stream.Position = 0;
        return File(stream, FeedbackPdf.MediaType, report.FileName + ".pdf");
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Suppliers = [.. (await db.Suppliers.AsNoTracking().Where(supplier => db.Lots.Any(lot => lot.SupplierId == supplier.Id && db.Samples.Any(sample => sample.LotId == lot.Id && sample.ReceivedOn != null)))
            .OrderBy(supplier => supplier.Name).Select(supplier => new { supplier.Id, supplier.Name }).ToListAsync(cancellationToken)).Select(supplier => (supplier.Id, supplier.Name))];
        Samples = Supplier is { } id ? await query.SamplesAsync(id, await reader.SealAsync(), cancellationToken) : [];
    }

    /// <summary>Null where there is no such supplier; the language is kept for the next time.</summary>
    private async Task<FeedbackReport?> ReportAsync(CancellationToken cancellationToken)
    {
        var supplier = await db.Suppliers.SingleOrDefaultAsync(one => one.Id == Supplier, cancellationToken);
        if (supplier is null)
        {
            return null;
        }

        Rule.Require(Input.Samples.Count > 0, "Choose at least one sample to tell of.", "");
        Rule.Require(Input.Samples.Count <= FeedbackReport.MostSamples, $"Choose at most {FeedbackReport.MostSamples} samples: send the rest in a second report.", "");
        var samples = await query.FindAsync(supplier.Id, Input.Samples, await reader.SealAsync(), cancellationToken);
        Rule.Require(samples.Count == Input.Samples.Distinct().Count(), "A sample is not there any more, or stands on an open table: open the page again.", "");
        supplier.Describe(supplier.Name, supplier.Kind, supplier.CountryCode, Input.Language, supplier.Email);
        await db.SaveChangesAsync(cancellationToken);
        var house = await db.Houses.AsNoTracking().Select(one => one.Name).SingleAsync(cancellationToken);
        return new FeedbackReport(house, supplier.Name, Input.Language, zone.Today, User.PersonName(), Rule.OptionalText(Input.Message, "The message", 2000, nameof(Input.Message)), samples);
    }

    public sealed class FeedbackForm
    {
        public List<Id<Sample>> Samples { get; set; } = [];

        [RegularExpression("en|es|pt|fr", ErrorMessage = "Choose one of the languages.")]
        public string Language { get; set; } = "en";

        [Display(Name = "What you add")]
        public string? Message { get; set; }
    }
}
