using GreenLedger.Data;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Papers;

/// <summary>Takes a note or an attachment off its record, after asking, and puts it back.</summary>
internal abstract class RemovalPage<T>(LedgerContext db, PapersReader papers, TimeProvider clock) : FormPage
    where T : class, IPaper
{
    [BindProperty(SupportsGet = true)]
    public Id<T> Id { get; set; }

    [BindProperty(SupportsGet = true)]
    public string? ReturnUrl { get; set; }

    public T? Paper { get; private set; }

    /// <summary>What the person is told is removed, or back.</summary>
    protected abstract string Called(T paper);

    /// <exception cref="RuleBrokenException">It is to be kept for now.</exception>
    protected virtual Task LetGoAsync(T paper, CancellationToken cancellationToken) => Task.CompletedTask;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Paper is null || Paper.IsRemoved ? NotFound() : await RefusalAsync(Paper, cancellationToken) ?? Page();
    }

    public Task<IActionResult> OnPostAsync(CancellationToken cancellationToken) => ChangeAsync(
        async paper =>
        {
            await LetGoAsync(paper, cancellationToken);
            paper.Remove(User.Person(), clock.GetUtcNow());
        },
        "removed", cancellationToken);

    public Task<IActionResult> OnPostPutBackAsync(CancellationToken cancellationToken) =>
        ChangeAsync(
            paper =>
            {
                paper.PutBack();
                return Task.CompletedTask;
            },
            "back", cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Paper = await db.Set<T>().FirstOrDefaultAsync(paper => EF.Property<Id<T>>(paper, nameof(Id)) == Id, cancellationToken);

    private async Task<IActionResult> ChangeAsync(Func<T, Task> change, string done, CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Paper is null)
        {
            return NotFound();
        }

        if (await RefusalAsync(Paper, cancellationToken) is { } refusal)
        {
            return refusal;
        }

        await change(Paper);
        await db.SaveChangesAsync(cancellationToken);
        Say($"{Called(Paper)} is {done}.");
        return PapersForm.Back(Url, ReturnUrl);
    }

    private Task<IActionResult?> RefusalAsync(T paper, CancellationToken cancellationToken) =>
        papers.RefusalAsync(new PapersOn(paper.About, paper.AboutId), cancellationToken);
}
