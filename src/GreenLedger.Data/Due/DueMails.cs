using GreenLedger.Domain;
using GreenLedger.Domain.Due;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Due;

public static class DueMails
{
    /// <summary>Those that somebody wishes for.</summary>
    public static IQueryable<DueMail> Wished(this IQueryable<DueMail> mails) => mails.Where(mail => mail.EndedAt == null);

    /// <summary>Those that were not looked at for this day yet.</summary>
    public static IQueryable<DueMail> Lacking(this IQueryable<DueMail> mails, DateOnly today) => mails.Wished().Where(mail => mail.LastDay == null || mail.LastDay < today);

    /// <summary>
    /// Takes a mail's day, once: of nodes that look at the same time one changes the row and the others find nothing to change.
    /// Within the transaction that stores what is written for the day.
    /// </summary>
    public static async Task<bool> TakeDayAsync(this IQueryable<DueMail> mails, Id<DueMail> id, DateOnly today, CancellationToken cancellationToken) =>
        await mails.Lacking(today).Where(mail => mail.Id == id).ExecuteUpdateAsync(set => set.SetProperty(mail => mail.LastDay, today).SetProperty(mail => mail.Trouble, (string?)null), cancellationToken) == 1;

    /// <summary>Keeps why the mail of a day could not be written, for its owner to read.</summary>
    public static Task<int> KeepTroubleAsync(this IQueryable<DueMail> mails, Id<DueMail> id, string trouble, CancellationToken cancellationToken) =>
        mails.Where(mail => mail.Id == id).ExecuteUpdateAsync(set => set.SetProperty(mail => mail.Trouble, trouble), cancellationToken);
}
