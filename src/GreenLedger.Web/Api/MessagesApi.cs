using GreenLedger.Data;
using GreenLedger.Data.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Api;

/// <summary>What the house has sent by mail, for scripts.</summary>
internal static class MessagesApi
{
    private const int MostMessages = 500;

    public static void MapMessagesApi(this IEndpointRouteBuilder api)
    {
        var messages = api.MapGroup("/summaries/messages").WithTags("Summaries");
        messages.MapGet("", ListAsync).WithName("ListMessages").WithSummary("The newest 500 messages: to whom, what for, and what became of them.");
        messages.MapPost("/{id}/send-again", SendAgainAsync).WithName("SendMessageAgain").WithSummary("Sends a message again that failed or may have arrived, with the Message-ID that it had.");
    }

    /// <param name="state">Only those in this state.</param>
    private static async Task<Ok<List<MessageReply>>> ListAsync(MessageQuery query, CancellationToken cancellationToken, MessageState? state = null) =>
        TypedResults.Ok((await query.ListAsync(state, 0, MostMessages, cancellationToken)).Select(MessageReply.Of).ToList());

    private static async Task<Results<NoContent, NotFound>> SendAgainAsync(Id<Message> id, LedgerContext db, HttpContext http, TimeProvider clock, CancellationToken cancellationToken)
    {
        if (await db.Messages.SingleOrDefaultAsync(message => message.Id == id, cancellationToken) is not { } message)
        {
            return TypedResults.NotFound();
        }

        message.SendAgain(http.User.Person(), clock.GetUtcNow());
        await db.SaveChangesAsync(cancellationToken);
        return TypedResults.NoContent();
    }

    /// <param name="SentBy">Null where the house sent it by itself.</param>
    /// <param name="EndedAt">When it was sent, may have arrived, or failed.</param>
    internal sealed record MessageReply(
        Guid Id, string MessageId, MessagePurpose Purpose, string Address, string Subject, string? SentBy, DateTimeOffset At, MessageState State, int Tries, DateTimeOffset? EndedAt, string? Trouble)
    {
        public static MessageReply Of(MessageRow row) =>
            new(row.Id.Value, row.MessageId, row.Purpose, row.Address, row.Subject, row.Who, row.At, row.State, row.Tries, row.EndedAt, row.Trouble);
    }
}
