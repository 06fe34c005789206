using GreenLedger.Data;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Papers;

internal sealed class AttachModel(LedgerContext db, PapersReader papers, AttachmentRules rules, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public PapersOf About { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? ReturnUrl { get; set; }

    [BindProperty]
    public AttachForm Input { get; set; } = new();

    public string Under { get; private set; } = "";

    public string Hint => rules.Hint;

    private PapersOn On => new(About, Id);

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return await papers.RefusalAsync(On, cancellationToken) ?? Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await papers.RefusalAsync(On, cancellationToken) is { } refusal)
        {
            return refusal;
        }

        var file = await rules.ReadAsync(Input.File, User.Person(), clock.GetUtcNow(), cancellationToken);
        db.StoredFiles.Add(file);
        db.Attachments.Add(new Attachment(About, Id, file, User.Person(), clock.GetUtcNow()));
        await db.SaveChangesAsync(cancellationToken);
        Say($"{file.Name} is attached.");
        return PapersForm.Back(Url, ReturnUrl);
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Under = await papers.FindNameAsync(On, cancellationToken) is { } name ? PapersForm.On(About, name) : "";

    internal sealed class AttachForm
    {
        public IFormFile? File { get; set; }
    }
}
