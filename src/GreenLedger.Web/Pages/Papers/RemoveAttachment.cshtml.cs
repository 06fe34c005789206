using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Papers;

internal sealed class RemoveAttachmentModel(LedgerContext db, PapersReader papers, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Attachment> Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? ReturnUrl { get; set; }

    public Attachment? Attachment { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Attachment is null || Attachment.IsRemoved ? NotFound() : await MayAsync(Attachment) ? Page() : Forbid();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) =>
        await ChangeAsync(attachment => attachment.Remove(User.Person(), clock.GetUtcNow()), "removed", cancellationToken);

    public async Task<IActionResult> OnPostPutBackAsync(CancellationToken cancellationToken) =>
        await ChangeAsync(attachment => attachment.PutBack(), "back", cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Attachment = await db.Attachments.FirstOrDefaultAsync(one => one.Id == Id, cancellationToken);

    private async Task<IActionResult> ChangeAsync(Action<Attachment> change, string done, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Attachment is null)
        {
            return NotFound();
        }

        if (!await MayAsync(Attachment))
        {
            return Forbid();
        }

        change(Attachment);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{Attachment.FileName} is {done}.");
        return PapersForm.Back(Url, ReturnUrl);
    }

    private async Task<bool> MayAsync(Attachment attachment) => await papers.MayWriteAsync(new PapersOn(attachment.About, attachment.AboutId));
}
