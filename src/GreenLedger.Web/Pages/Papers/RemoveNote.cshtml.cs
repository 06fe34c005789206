using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Papers;

internal sealed class RemoveNoteModel(LedgerContext db, PapersReader papers, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Note> Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? ReturnUrl { get; set; }

    public Note? Note { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Note is null || Note.IsRemoved ? NotFound() : await MayAsync(Note) ? Page() : Forbid();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) =>
        await ChangeAsync(note => note.Remove(User.Person(), clock.GetUtcNow()), "removed", cancellationToken);

    public async Task<IActionResult> OnPostPutBackAsync(CancellationToken cancellationToken) =>
        await ChangeAsync(note => note.PutBack(), "back", cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Note = await db.Notes.FirstOrDefaultAsync(one => one.Id == Id, cancellationToken);

    private async Task<IActionResult> ChangeAsync(Action<Note> change, string done, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Note is null)
        {
            return NotFound();
        }

        if (!await MayAsync(Note))
        {
            return Forbid();
        }

        change(Note);
        await db.SaveChangesAsync(cancellationToken);
        Say($"The note is {done}.");
        return PapersForm.Back(Url, ReturnUrl);
    }

    private async Task<bool> MayAsync(Note note) => await papers.MayWriteAsync(new PapersOn(note.About, note.AboutId));
}
