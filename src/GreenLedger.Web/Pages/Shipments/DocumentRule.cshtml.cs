using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Shipments;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Shipments;

/// <summary>One document that the house asks for, or a new one.</summary>
public sealed class DocumentRuleModel(LedgerContext db) : FormPage
{
    /// <summary>Empty for a new one.</summary>
    [BindProperty(SupportsGet = true)]
    public Id<DocumentRule>? Id { get; set; }

    [BindProperty]
    public RuleForm Input { get; set; } = new();

    /// <summary>Null for a new one.</summary>
    public DocumentRule? Known { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        Input = Known is null ? new RuleForm { Position = await NextPositionAsync(cancellationToken) } : RuleForm.Of(Known);
        return Id is not null && Known is null ? NotFound() : Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Id is not null && Known is null)
        {
            return NotFound();
        }

        if (Known is null)
        {
            db.Add(new DocumentRule(Input.Name ?? "", Input.Position, Input.Incoterms, Input.Origins, Input.Destinations, Input.Certificate, Input.Note));
        }
        else
        {
            OpenedOn(Known, Input.Version);
            Known.Describe(Input.Name ?? "", Input.Position, Input.Note);
            Known.Limit(Input.Incoterms, Input.Origins, Input.Destinations, Input.Certificate);
        }

        await db.SaveChangesAsync(cancellationToken);
        Say($"{Input.Name} is saved.");
        return RedirectToPage("Documents");
    }

    public Task<IActionResult> OnPostPutAwayAsync(CancellationToken cancellationToken) => ChangeAsync(rule => rule.PutAway(), "is put away: new shipments do not ask for it.", cancellationToken);

    public Task<IActionResult> OnPostTakeUpAsync(CancellationToken cancellationToken) => ChangeAsync(rule => rule.TakeUp(), "is asked for again.", cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Known = Id is null ? null : await db.DocumentRules.SingleOrDefaultAsync(rule => rule.Id == Id, cancellationToken);

    private async Task<int> NextPositionAsync(CancellationToken cancellationToken) =>
        Math.Min(999, (await db.DocumentRules.MaxAsync(rule => (int?)rule.Position, cancellationToken) ?? 0) + 10);

    private async Task<IActionResult> ChangeAsync(Action<DocumentRule> act, string said, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Known is null)
        {
            return NotFound();
        }

        act(Known);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{Known.Name} {said}");
        return RedirectToPage("Documents");
    }

    public sealed class RuleForm
    {
        public int Version { get; set; }

        [Required(ErrorMessage = "Name the document.")]
        public string? Name { get; set; }

        [Display(Name = "Place in the list")]
        public int Position { get; set; }

        [Display(Name = "Delivery rules")]
        public string? Incoterms { get; set; }

        public string? Origins { get; set; }

        public string? Destinations { get; set; }

        public string? Certificate { get; set; }

        public string? Note { get; set; }

        public static RuleForm Of(DocumentRule rule) => new()
        {
            Version = rule.Version,
            Name = rule.Name,
            Position = rule.Position,
            Incoterms = rule.Incoterms,
            Origins = rule.Origins,
            Destinations = rule.Destinations,
            Certificate = rule.Certificate,
            Note = rule.Note,
        };
    }
}
