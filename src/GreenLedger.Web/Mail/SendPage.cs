using GreenLedger.Data;
using GreenLedger.Domain.Offers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Mail;

/// <summary>Sends a paper to contacts of a supplier: whom to, about what, with which words. Each gets a message of their own.</summary>
internal abstract class SendPage(LedgerContext db, Outbox outbox) : FormPage
{
    /// <summary>ISO 639-1: the language that words are proposed in; that of the first contact where none is chosen.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Language { get; set; }

    [BindProperty]
    public SendForm Input { get; set; } = new();

    public LetterCase Case { get; private set; } = null!;

    public bool CanSend => outbox.CanSend;

    protected override bool IsThere => Case is not null;

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Case is null)
        {
            return NotFound();
        }

        Language = SupplierContact.Languages.Contains(Language) ? Language : Case.Language(null);
        Input = new SendForm { To = [.. Case.Recipients.Select(one => one.Address)], Subject = Case.Subject(Language), Text = Case.Text(Language, User.PersonName()) };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Case is null)
        {
            return NotFound();
        }

        await outbox.PutOnceAsync(Input.Submission, Input.To, Case.To(Input.To, Input.Subject, Input.Text), User.Person(), cancellationToken);
        await SentAsync(cancellationToken);
        await db.SaveChangesAsync(cancellationToken);
        Say($"It is on its way to {string.Join(", ", Input.To)}. What becomes of it stands below under Sent by mail.");
        return Back();
    }

    /// <summary>To the page of the record.</summary>
    protected abstract IActionResult Back();

    /// <summary>What is kept besides when it is sent.</summary>
    protected virtual Task SentAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    protected abstract Task<LetterCase?> FindAsync(CancellationToken cancellationToken);

    protected override async Task LoadAsync(CancellationToken cancellationToken) => Case = (await FindAsync(cancellationToken))!;

    internal sealed class SendForm
    {
        /// <summary>One opening of the form: however often it is sent, each address gets one message.</summary>
        public Guid Submission { get; set; } = Guid.NewGuid();

        public List<string> To { get; set; } = [];

        public string? Subject { get; set; }

        public string? Text { get; set; }
    }
}
