using System.Globalization;
using GreenLedger.Data;
using GreenLedger.Data.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.Display;
using GreenLedger.Web.Mail;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Summaries;

/// <summary>What was sent to whom and when, and what failed; a person's word sends a message again.</summary>
internal sealed class MailModel(LedgerContext db, MessageQuery query, MailSettings settings, TimeProvider clock) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public MessageState? State { get; set; }

    [BindProperty(SupportsGet = true)]
    public int PageNumber { get; set; } = 1;

    public bool CanSend => settings.CanSend;

    public IReadOnlyList<MessageRow> Rows { get; private set; } = [];

    public Paging Paging { get; private set; } = Paging.Of(1, 0);

    public Task OnGetAsync(CancellationToken cancellationToken) => LoadAsync(cancellationToken);

    public async Task<IActionResult> OnPostAgainAsync(Id<Message> message, CancellationToken cancellationToken)
    {
        if (await db.Messages.SingleOrDefaultAsync(one => one.Id == message, cancellationToken) is not { } found)
        {
            return NotFound();
        }

        found.SendAgain(User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        Say($"It is sent to {found.Address} again.");
        return RedirectToPage(new { State });
    }

    public static string? Tag(MessageState state) => state switch
    {
        MessageState.Sent => "tag-good",
        MessageState.Failed => "tag-stop",
        _ => "tag-caution",
    };

    public static bool CanBeSentAgain(MessageRow row) => row.State is MessageState.Failed or MessageState.MayHaveArrived;

    /// <summary>When it ended, or is tried next.</summary>
    public static string Said(MessageRow row, HouseZone house) => row switch
    {
        { State: MessageState.Sent, EndedAt: { } at } => $"taken over by the mail server {house.Moment(at)}",
        { EndedAt: { } at } => string.Create(CultureInfo.InvariantCulture, $"{house.Moment(at)}, after {row.Tries} {(row.Tries == 1 ? "try" : "tries")}"),
        { Tries: > 0 } => string.Create(CultureInfo.InvariantCulture, $"tried {row.Tries} times, next {house.Moment(row.NextTryAt)}"),
        _ => "waits for its turn",
    };

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        Paging = Paging.Of(PageNumber, await query.CountAsync(State, cancellationToken), "message", "messages");
        Rows = await query.ListAsync(State, Paging.Skip, Paging.Size, cancellationToken);
    }
}
