using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Data.Summaries;
using GreenLedger.Documents.Papers;
using GreenLedger.Documents.Summaries;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Summaries;
using GreenLedger.Web.Display;
using GreenLedger.Web.Mail;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Summaries;

/// <summary>What a supplier hears back of chosen samples: previewed, then taken as a PDF or sent by mail.</summary>
internal sealed class FeedbackModel(LedgerContext db, FeedbackQuery query, Reader reader, HouseZone zone, Outbox outbox, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Supplier>? Supplier { get; set; }

    [BindProperty]
    public FeedbackForm Input { get; set; } = new();

    /// <summary>Suppliers with a sample that is here, by name.</summary>
    public IReadOnlyList<(Id<Supplier> Id, string Name)> Suppliers { get; private set; } = [];

    public IReadOnlyList<TellableSample> Samples { get; private set; } = [];

    public FeedbackReport? Preview { get; private set; }

    public bool CanSend => outbox.CanSend;

    /// <summary>Whom it can be sent to: contacts of the supplier that feedback goes to, and the supplier's own address.</summary>
    public IReadOnlyList<(string Address, string Name)> Recipients { get; private set; } = [];

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

        await KeepLanguageAsync(cancellationToken);
        var pdf = Pdf(report);
        await KeepCopyAsync(report, pdf, isMailed: false, cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        return File(pdf, FeedbackPdf.MediaType, report.FileName + ".pdf");
    }

    /// <summary>Puts the PDF into the outbox, a message for each recipient, who does not see the others.</summary>
    public async Task<IActionResult> OnPostMailAsync(CancellationToken cancellationToken)
    {
        if (await ReportAsync(cancellationToken) is not { } report)
        {
            return NotFound();
        }

        await LoadAsync(cancellationToken);
        Rule.Require(Input.To.Count > 0 && Input.To.All(address => Recipients.Any(one => one.Address == address)), "Choose whom to send it to.", "");
        var file = new MailFile(report.FileName + ".pdf", FeedbackPdf.MediaType, Pdf(report));
        await KeepLanguageAsync(cancellationToken);
        var isNew = await outbox.PutOnceAsync(
            Input.Submission, [.. Input.To], new Letter(MessagePurpose.Feedback, Supplier?.Value, $"{FeedbackText.Title(report)} · {report.House}", FeedbackText.Letter(report), file, $"{string.Join(' ', Input.Samples)} {Input.Language} {Input.Message}"), User.Person(), cancellationToken);
        if (isNew)
        {
            await KeepCopyAsync(report, file.Bytes, isMailed: true, cancellationToken);
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"It is on its way to {string.Join(", ", Input.To)}. What becomes of it stands under Mail.");
        return RedirectToPage(new { Supplier });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Suppliers = [.. (await db.Suppliers.AsNoTracking().Where(supplier => db.Lots.Any(lot => lot.SupplierId == supplier.Id && db.Samples.Any(sample => sample.LotId == lot.Id && sample.ReceivedOn != null)))
            .OrderBy(supplier => supplier.Name).Select(supplier => new { supplier.Id, supplier.Name }).ToListAsync(cancellationToken)).Select(supplier => (supplier.Id, supplier.Name))];
        Samples = Supplier is { } id ? await query.SamplesAsync(id, await reader.SealAsync(), cancellationToken) : [];
        Recipients = Supplier is { } to ? await RecipientsAsync(to, cancellationToken) : [];
    }

    private async Task<IReadOnlyList<(string Address, string Name)>> RecipientsAsync(Id<Supplier> id, CancellationToken cancellationToken)
    {
        var contacts = (await db.SupplierContacts.AsNoTracking().Of(id).ToListAsync(cancellationToken)).Where(contact => contact.IsActive && contact.Receives.HasFlag(Receives.Feedback)).Select(contact => (contact.Email, contact.Name));
        var own = await db.Suppliers.Where(one => one.Id == id && one.Email != null).Select(one => new { one.Email, one.Name }).ToListAsync(cancellationToken);
        return [.. contacts.Concat(own.Select(one => (one.Email!, one.Name))).DistinctBy(one => one.Item1, StringComparer.OrdinalIgnoreCase)];
    }

    private static byte[] Pdf(FeedbackReport report)
    {
        using var stream = new MemoryStream();
        FeedbackPdf.Write(report, stream);
        return stream.ToArray();
    }

    /// <summary>What was taken or sent tells the language of the next time; a preview does not.</summary>
    private async Task KeepLanguageAsync(CancellationToken cancellationToken)
    {
        var supplier = await db.Suppliers.SingleAsync(one => one.Id == Supplier, cancellationToken);
        supplier.Describe(supplier.Name, supplier.Kind, supplier.CountryCode, Input.Language, supplier.Email);
    }

    /// <summary>What was told stays as it was told.</summary>
    private async Task KeepCopyAsync(FeedbackReport report, byte[] pdf, bool isMailed, CancellationToken cancellationToken)
    {
        var file = new StoredFile(report.FileName + ".pdf", FeedbackPdf.MediaType, pdf, User.Person(), clock.GetUtcNow());
        var samples = Input.Samples.Distinct().ToList();
        var lots = await db.Samples.Where(sample => samples.Contains(sample.Id)).Select(sample => sample.LotId).Distinct().ToListAsync(cancellationToken);
        db.AddRange(file, new FeedbackCopy(Supplier!.Value, report.Language ?? "en", lots, file, isMailed, User.Person(), clock.GetUtcNow()));
    }

    /// <summary>Null where there is no such supplier.</summary>
    private async Task<FeedbackReport?> ReportAsync(CancellationToken cancellationToken)
    {
        var supplier = await db.Suppliers.AsNoTracking().SingleOrDefaultAsync(one => one.Id == Supplier, cancellationToken);
        if (supplier is null)
        {
            return null;
        }

        Rule.Require(Input.Samples.Count > 0, "Choose at least one sample to tell of.", "");
        Rule.Require(Input.Samples.Count <= FeedbackReport.MostSamples, $"Choose at most {FeedbackReport.MostSamples} samples: send the rest in a second report.", "");
        var samples = await query.FindAsync(supplier.Id, Input.Samples, await reader.SealAsync(), cancellationToken);
        Rule.Require(samples.Count == Input.Samples.Distinct().Count(), "A sample is not there any more, or stands on an open table: open the page again.", "");
        var house = await db.Houses.AsNoTracking().Select(one => one.Name).SingleAsync(cancellationToken);
        return new FeedbackReport(house, supplier.Name, Input.Language, zone.Today, User.PersonName(), Rule.OptionalText(Input.Message, "The message", 2000, nameof(Input.Message)), samples);
    }

    public sealed class FeedbackForm
    {
        public List<Id<Sample>> Samples { get; set; } = [];

        /// <summary>One opening of the form: however often it is sent, each address gets one message.</summary>
        public Guid Submission { get; set; } = Guid.NewGuid();

        /// <summary>Addresses, where it is sent by mail.</summary>
        public List<string> To { get; set; } = [];

        [RegularExpression("en|es|pt|fr", ErrorMessage = "Choose one of the languages.")]
        public string Language { get; set; } = "en";

        [Display(Name = "What you add")]
        public string? Message { get; set; }
    }
}
