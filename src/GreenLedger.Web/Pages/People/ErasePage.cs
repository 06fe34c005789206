using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.Papers;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.People;

/// <summary>Erases the data of one person or contact: shows first what would be changed.</summary>
internal abstract class ErasePage(LedgerContext db, PersonErasure erasing, TimeProvider clock) : FormPage
{
    [BindProperty]
    public EraseForm Input { get; set; } = new();

    public ErasedSubject Subject { get; private set; } = new(ErasedKind.Person, default, "", []);

    public string Designation { get; private set; } = "";

    public IReadOnlyList<NamedIn> Found { get; private set; } = [];

    public async Task OnGetAsync(CancellationToken cancellationToken) => await LoadAsync(cancellationToken);

    /// <summary>Looks again, with the other spellings.</summary>
    public async Task<IActionResult> OnPostPreviewAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellationToken);
        var subject = (await FindAsync(cancellationToken))!;
        await RequireAsync(cancellationToken);
        var erasure = new Erasure(subject.Kind, await erasing.NextAsync(subject.Kind, cancellationToken), subject.Id, Input.Reason, User.Person(), clock.GetUtcNow());
        await erasing.EraseAsync(erasure, subject, Words(subject, erasure.Designation), cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        Say($"The data are erased: {erasure.Texts} texts now say {erasure.Designation}.");
        return RedirectToPage("/People/Index");
    }

    protected abstract Task<ErasedSubject?> FindAsync(CancellationToken cancellationToken);

    /// <summary>What must hold before anything is erased.</summary>
    protected virtual Task RequireAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    protected override async Task<bool> IsThereAsync(CancellationToken cancellationToken) => await FindAsync(cancellationToken) is not null;

    protected override bool IsJudged => Request.Query["handler"] != "Preview";

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Subject = (await FindAsync(cancellationToken))!;
        Designation = Erasure.DesignationOf(Subject.Kind, await erasing.NextAsync(Subject.Kind, cancellationToken));
        var names = Input.Spellings.Where(name => name.Length >= ErasedWords.Shortest);
        Found = await erasing.PreviewAsync(new ErasedWords([Subject.Name, .. names], Subject.Addresses, Designation), cancellationToken);
    }

    private ErasedWords Words(ErasedSubject subject, string designation) => new([subject.Name, .. Input.Spellings], subject.Addresses, designation);

    internal sealed class EraseForm
    {
        [Display(Name = "Other spellings")]
        public string? Also { get; set; }

        [Required(ErrorMessage = "Please say why: it is kept with the day and who erased.")]
        public string Reason { get; set; } = "";

        /// <summary>One in each line.</summary>
        public IEnumerable<string> Spellings => (Also ?? "").Split(['\n', '\r'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }
}
