using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.Papers;

internal sealed class WriteNoteModel(LedgerContext db, PapersReader papers, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public PapersOf About { get; set; }

    [BindProperty(SupportsGet = true)]
    public Guid Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? ReturnUrl { get; set; }

    [BindProperty]
    public WriteNoteForm Input { get; set; } = new();

    public string Under { get; private set; } = "";

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

        db.Notes.Add(new Note(About, Id, Input.Text ?? "", User.Person(), clock.GetUtcNow()));
        await db.SaveChangesAsync(cancellationToken);
        Say("The note is written down.");
        return PapersForm.Back(Url, ReturnUrl);
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Under = await papers.FindNameAsync(On, cancellationToken) is { } name ? PapersForm.On(About, name) : "";

    internal sealed class WriteNoteForm
    {
        [Display(Name = "Note")]
        public string? Text { get; set; }
    }
}
