using System.Net.Mail;
using GreenLedger.Domain.People;

namespace GreenLedger.Domain.Papers;

/// <summary>What a message is sent for.</summary>
public enum MessagePurpose
{
    /// <summary>The daily mail of what is due.</summary>
    Due = 0,

    /// <summary>What a supplier hears back about samples.</summary>
    Feedback = 1,

    /// <summary>A purchase confirmation.</summary>
    Contract = 2,

    /// <summary>The letter of a claim.</summary>
    Claim = 3,

    /// <summary>How a lot arrived and cupped.</summary>
    Arrival = 4,
}

/// <summary>How far a message is.</summary>
public enum MessageState
{
    /// <summary>To be sent, now or at a later try.</summary>
    Queued = 0,

    /// <summary>The mail server took it over.</summary>
    Sent = 1,

    /// <summary>Its text went out and no answer came: nobody knows whether the mail server took it over.</summary>
    MayHaveArrived = 2,

    /// <summary>Refused for good, or tried often enough.</summary>
    Failed = 3,

    /// <summary>Nobody wanted it any more before it was sent.</summary>
    Dropped = 4,
}

/// <summary>
/// An e-mail of the house, kept with what became of it. One node has it at a time. Before its text goes out that is written
/// down: whatever breaks off later leaves it as perhaps arrived, which only a person's word sends again, and whatever breaks
/// off before is tried anew. It keeps its Message-ID, by which a mail program knows it again.
/// </summary>
public sealed class Message
{
    /// <summary>A node that has had a message for this long has fallen away; longer than a try can last.</summary>
    public static readonly TimeSpan Silence = TimeSpan.FromMinutes(5);

    /// <summary>Minutes until the next try, after the first, the second and so on; with the last it has failed. Common practice, no source.</summary>
    private static readonly int[] Pauses = [1, 5, 15, 60, 240, 720];

    private Message() => MessageId = Address = Subject = "";

    /// <param name="purpose">What it is sent for.</param>
    /// <param name="written">As it goes out.</param>
    /// <param name="about">The record that it is about; null where it is about none.</param>
    /// <param name="by">Who sends it; null where the house does by itself.</param>
    /// <param name="at">When it was put into the outbox.</param>
    /// <exception cref="RuleBrokenException">It has no usable address or no subject.</exception>
    public Message(MessagePurpose purpose, MessageText written, Guid? about, Id<Person>? by, DateTimeOffset at)
        : this()
    {
        ArgumentNullException.ThrowIfNull(written);
        Rule.Require(MailAddress.TryCreate(written.Address, out var read) && read.Address == written.Address, "This is not an e-mail address: it needs a name, an @ and a domain.", nameof(Address));
        Id = Id<Message>.New();
        (Purpose, AboutId, By, At, NextTryAt) = (purpose, about, by, at, at);
        (MessageId, Address, Bytes) = (written.MessageId, written.Address, written.Bytes);
        Subject = Rule.Text(written.Subject, "The subject", 200, nameof(Subject));
    }

    public Id<Message> Id { get; private set; }

    public int Version { get; private set; }

    public MessagePurpose Purpose { get; private set; }

    /// <summary>By RFC 5322, without its angle brackets; the same at every try.</summary>
    public string MessageId { get; private set; }

    /// <summary>Whom it goes to.</summary>
    public string Address { get; private set; }

    public string Subject { get; private set; }

    /// <summary>The whole message by RFC 5322, as it goes out.</summary>
    public byte[] Bytes { get; private set; } = [];

    public Guid? AboutId { get; private set; }

    /// <summary>The sending that it belongs to, by the opening of the form and what it said: one address gets one message of it. Null where no form was.</summary>
    public Guid? SubmissionId { get; private set; }

    /// <summary>Whose wish it follows, asked again before it is sent; null where it follows nobody's.</summary>
    public Id<Person>? OwnerId { get; private set; }

    /// <summary>The day of the house that it is for; later it is not sent any more. Null where it holds on any day.</summary>
    public DateOnly? ForDay { get; private set; }

    /// <summary>Null where the house sent it by itself.</summary>
    public Id<Person>? By { get; private set; }

    public DateTimeOffset At { get; private set; }

    public MessageState State { get; private set; }

    /// <summary>Tries since somebody last wanted it sent.</summary>
    public int Tries { get; private set; }

    public DateTimeOffset NextTryAt { get; private set; }

    /// <summary>The node that has it; null while none has.</summary>
    public string? TakenBy { get; private set; }

    public DateTimeOffset? TakenAt { get; private set; }

    /// <summary>Since then its text may be on its way, in this try.</summary>
    public DateTimeOffset? TextAt { get; private set; }

    /// <summary>When it was sent, may have arrived, or failed.</summary>
    public DateTimeOffset? EndedAt { get; private set; }

    /// <summary>What went wrong at the last try, in a sentence.</summary>
    public string? Trouble { get; private set; }

    public Id<Person>? AskedAgainBy { get; private set; }

    public DateTimeOffset? AskedAgainAt { get; private set; }

    /// <summary>Whether a person may have it sent again.</summary>
    public bool CanBeSentAgain => State is MessageState.Failed or MessageState.MayHaveArrived;

    /// <summary>Ties it to one sending.</summary>
    public Message SentFrom(Guid submission)
    {
        SubmissionId = submission;
        return this;
    }

    /// <summary>Ties it to somebody's wish and to a day, both asked again before it is sent.</summary>
    public Message For(Id<Person> owner, DateOnly day)
    {
        (OwnerId, ForDay) = (owner, day);
        return this;
    }

    /// <summary>Whether it is still to be sent, as wishes stand and the clock shows.</summary>
    /// <param name="today">The house's day.</param>
    /// <param name="isWished">Its owner is active and wants it.</param>
    public bool StillHolds(DateOnly today, bool isWished) => (OwnerId is null || isWished) && (ForDay is not { } day || day >= today);

    /// <summary>Takes it for a node, or ends what a node that fell away left: then it is not taken.</summary>
    /// <exception cref="RuleBrokenException">It is not to be sent, or another node has it.</exception>
    public void Take(string node, DateTimeOffset now)
    {
        Rule.Require(State == MessageState.Queued && NextTryAt <= now && (TakenBy is null || TakenAt + Silence < now), "This message is in other hands.", nameof(State));
        if (TextAt is not null)
        {
            LoseSight("The node that sent it fell away before the mail server answered.", now);
            return;
        }

        Tries++;
        (TakenBy, TakenAt) = (node, now);
    }

    /// <summary>From here on its text may be on its way.</summary>
    public void BeginText(string node, DateTimeOffset now)
    {
        RequireTaken(node);
        TextAt = now;
    }

    /// <summary>The mail server took it over.</summary>
    public void Arrive(string node, DateTimeOffset now)
    {
        RequireTaken(node);
        Trouble = null;
        End(MessageState.Sent, now);
    }

    /// <summary>Nothing of its text was taken over: it is tried again, or has failed when it was tried often enough.</summary>
    public void Postpone(string node, string trouble, DateTimeOffset now)
    {
        RequireTaken(node);
        Trouble = Sentence(trouble);
        if (Tries > Pauses.Length)
        {
            End(MessageState.Failed, now);
            return;
        }

        (TakenBy, TakenAt, TextAt) = (null, null, null);
        NextTryAt = now.AddMinutes(Pauses[Tries - 1]);
    }

    /// <summary>The mail server refused it for good.</summary>
    public void Fail(string node, string trouble, DateTimeOffset now)
    {
        RequireTaken(node);
        Trouble = Sentence(trouble);
        End(MessageState.Failed, now);
    }

    /// <summary>Nobody wants it any more: it is not sent.</summary>
    public void Drop(string node, string why, DateTimeOffset now)
    {
        RequireTaken(node);
        Rule.Require(TextAt is null, "Its text may be on its way already.", nameof(State));
        Trouble = Sentence(why);
        End(MessageState.Dropped, now);
    }

    /// <summary>Its text went out and no answer came.</summary>
    public void LoseSight(string trouble, DateTimeOffset now)
    {
        Trouble = Sentence(trouble);
        End(MessageState.MayHaveArrived, now);
    }

    /// <summary>Somebody wants it sent again, with the Message-ID that it had.</summary>
    /// <exception cref="RuleBrokenException">It is sent, or on its way.</exception>
    public void SendAgain(Id<Person> by, DateTimeOffset at)
    {
        Rule.Require(CanBeSentAgain, State == MessageState.Sent ? "This message was sent: send a new one instead." : State == MessageState.Dropped ? "Nobody wanted this message any more: it stays unsent." : "This message is still to be sent: nothing needs to be done.", nameof(State));
        (State, Tries, NextTryAt, TextAt, EndedAt) = (MessageState.Queued, 0, at, null, null);
        (AskedAgainBy, AskedAgainAt) = (by, at);
    }

    private void End(MessageState state, DateTimeOffset now) => (State, TakenBy, TakenAt, EndedAt) = (state, null, null, now);

    private void RequireTaken(string node) => Rule.Require(State == MessageState.Queued && TakenBy == node, "This message is in other hands.", nameof(State));

    private static string Sentence(string trouble) => trouble.Length > 500 ? trouble[..500] : trouble;
}

/// <summary>A message as it goes out: whom to, about what, its Message-ID and all its bytes by RFC 5322.</summary>
public sealed record MessageText(string Address, string Subject, string MessageId, byte[] Bytes);

public static class MessageWords
{
    public static string Word(this MessageState state) => state switch
    {
        MessageState.Queued => "to be sent",
        MessageState.Sent => "sent",
        MessageState.MayHaveArrived => "may have arrived",
        MessageState.Failed => "failed",
        MessageState.Dropped => "dropped",
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };

    public static string Word(this MessagePurpose purpose) => purpose switch
    {
        MessagePurpose.Due => "what is due",
        MessagePurpose.Feedback => "feedback to a supplier",
        MessagePurpose.Contract => "purchase confirmation",
        MessagePurpose.Claim => "letter of a claim",
        MessagePurpose.Arrival => "arrival report",
        _ => throw new ArgumentOutOfRangeException(nameof(purpose)),
    };
}
