using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Shipments;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.Shipments;
using GreenLedger.Web.Display;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Shipments;

/// <summary>Says how far one document of a shipment is, with its file where one came.</summary>
internal sealed class DocumentModel(LedgerContext db, AttachmentRules rules, HouseZone house, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<ShipmentDocument> Id { get; set; }

    [BindProperty]
    public DocumentForm Input { get; set; } = new();

    public Shipment Shipment { get; private set; } = null!;

    public ShipmentDocument Document => Shipment.Documents.Single(document => document.Id == Id);

    /// <summary>What the house notes about this document.</summary>
    public string? Advice { get; private set; }

    public string Hint => rules.Hint;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = new DocumentForm { Version = Shipment.Version, State = Document.State, On = Document.On ?? house.Today, Reason = Document.Reason };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        OpenedOn(Shipment, Input.Version);
        Attachment? attachment = null;
        if (Input.File is not null)
        {
            var file = await rules.ReadAsync(Input.File, User.Person(), clock.GetUtcNow(), cancellationToken);
            attachment = new Attachment(PapersOf.Shipment, Shipment.Id.Value, file, User.Person(), clock.GetUtcNow());
            db.AddRange(file, attachment);
        }

        Shipment.Document(Id, Input.State, Input.On, Input.Reason, attachment);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{Document.Name}: {Document.State.Word()}.");
        return RedirectToPage("Shipment", new { Shipment.Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Shipment = await db.Shipments.Whole().SingleAsync(shipment => shipment.Documents.Any(document => document.Id == Id), cancellationToken);
        var rule = Document.RuleId;
        Advice = await db.DocumentRules.Where(one => one.Id == rule).Select(one => one.Note).SingleOrDefaultAsync(cancellationToken);
    }

    protected override Task<bool> IsThereAsync(CancellationToken cancellationToken) =>
        db.Shipments.AnyAsync(shipment => shipment.Documents.Any(document => document.Id == Id), cancellationToken);

    internal sealed class DocumentForm
    {
        public int Version { get; set; }

        [Display(Name = "How far")]
        public DocumentState State { get; set; }

        [Display(Name = "Day")]
        public DateOnly? On { get; set; }

        [Display(Name = "Why it is not needed")]
        public string? Reason { get; set; }

        public IFormFile? File { get; set; }
    }
}
