using GreenLedger.Data;
using GreenLedger.Data.Due;
using GreenLedger.Domain.Due;
using GreenLedger.Web.Mail;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Myself;

/// <summary>One's own daily mail of what is due: wished for and ended.</summary>
internal sealed class DueMailModel(LedgerContext db, DueQuery query, MailSettings settings, TimeProvider clock) : FormPage
{
    public bool CanSend => settings.CanSend;

    /// <summary>Null where the person wants none.</summary>
    public DueMail? Wish { get; private set; }

    public string Address { get; private set; } = "";

    /// <summary>Of the house's clock.</summary>
    public int Hour { get; private set; }

    public Task OnGetAsync(CancellationToken cancellationToken) => LoadAsync(cancellationToken);

    public async Task<IActionResult> OnPostBeginAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Wish is null)
        {
            await BeginAsync(cancellationToken);
            await db.SaveChangesAsync(cancellationToken);
        }

        Say("You get a mail on each day on which something is late or soon due.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostEndAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        if (Wish is not null)
        {
            Wish.End(clock.GetUtcNow());
            await db.SaveChangesAsync(cancellationToken);
        }

        Say("You get no daily mail any more.");
        return RedirectToPage();
    }

    /// <summary>A wish that was ended is taken up again, with the day that it was looked at last: no second mail on one day.</summary>
    private async Task BeginAsync(CancellationToken cancellationToken)
    {
        var person = User.Person();
        if (await db.DueMails.SingleOrDefaultAsync(mail => mail.OwnerId == person, cancellationToken) is { } before)
        {
            before.Resume(clock.GetUtcNow());
            return;
        }

        db.Add(new DueMail(person, clock.GetUtcNow()));
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var person = User.Person();
        Wish = await db.DueMails.Wished().SingleOrDefaultAsync(mail => mail.OwnerId == person, cancellationToken);
        Address = await db.Users.Where(account => account.PersonId == person).Select(account => account.Email).FirstOrDefaultAsync(cancellationToken) ?? "";
        Hour = (await query.HabitsAsync(cancellationToken)).MailHour;
    }
}
