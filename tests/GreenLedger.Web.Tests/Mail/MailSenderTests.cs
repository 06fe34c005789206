using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;
using MimeKit;
using SmtpServer.Protocol;

namespace GreenLedger.Web.Tests.Mail;

/// <summary>Against a real mail server, over a line that breaks at the worst moments.</summary>
public sealed class MailSenderTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_message_goes_out_once_as_it_was_written_and_with_its_file()
    {
        await using var house = await MailHouse.OpenAsync();
        var id = await house.PutAsync();

        Assert.True(await house.Node().SendNextAsync(Stop));
        Assert.False(await house.Node().SendNextAsync(Stop));

        var sent = await house.FindAsync(id);
        var taken = Assert.Single(house.Office.Taken);
        Assert.Equal((MessageState.Sent, 1, house.Clock.Now), (sent.State, sent.Tries, sent.EndedAt));
        Assert.Equal((sent.MessageId, "Your samples", MailHouse.Address), (taken.MessageId, taken.Subject, taken.To.Mailboxes.Single().Address));
        Assert.Equal("We cupped them: très bien.", taken.TextBody!.Trim());
        Assert.Equal("feedback.pdf", Assert.Single(taken.Attachments.OfType<MimePart>()).FileName);
    }

    [Theory]
    [InlineData(Fault.CutBeforeText)]
    [InlineData(Fault.StallBeforeText)]
    public async Task A_line_that_breaks_before_the_text_loses_no_message_and_doubles_none(Fault fault)
    {
        await using var house = await MailHouse.OpenAsync();
        var id = await house.PutAsync();
        house.Line.Fault = fault;

        await house.Node().SendNextAsync(Stop);
        var broken = await house.FindAsync(id);
        var tooEarly = await house.Node().SendNextAsync(Stop);
        house.Line.Fault = Fault.None;
        house.Clock.Now += TimeSpan.FromMinutes(1);
        await house.Node().SendNextAsync(Stop);

        Assert.Equal((MessageState.Queued, 1, null), (broken.State, broken.Tries, broken.TakenBy));
        Assert.Contains("could not be used", broken.Trouble, StringComparison.Ordinal);
        Assert.False(tooEarly);
        Assert.Equal((MessageState.Sent, 2, null), ((await house.FindAsync(id)).State, (await house.FindAsync(id)).Tries, (await house.FindAsync(id)).Trouble));
        Assert.Equal(broken.MessageId, Assert.Single(house.Office.Taken).MessageId);
    }

    [Theory]
    [InlineData(Fault.CutAfterText)]
    [InlineData(Fault.StallAfterText)]
    public async Task A_line_that_breaks_after_the_text_may_have_arrived_and_only_a_persons_word_sends_it_again(Fault fault)
    {
        await using var house = await MailHouse.OpenAsync();
        var id = await house.PutAsync();
        house.Line.Fault = fault;

        await house.Node().SendNextAsync(Stop);
        house.Line.Fault = Fault.None;
        var doubtful = await house.FindAsync(id);
        house.Clock.Now += TimeSpan.FromDays(7);
        var byItself = await house.Node().SendNextAsync(Stop);
        var before = house.Office.Taken.Count;
        await house.ChangeAsync(id, message => message.SendAgain(house.Buyer.Id, house.Clock.Now));
        await house.Node().SendNextAsync(Stop);

        Assert.Equal((MessageState.MayHaveArrived, 1), (doubtful.State, before)); // the server has it, and nobody here can know
        Assert.Contains("before the mail server answered", doubtful.Trouble, StringComparison.Ordinal);
        Assert.False(byItself);
        Assert.Equal(2, house.Office.Taken.Count);
        Assert.All(house.Office.Taken, taken => Assert.Equal(doubtful.MessageId, taken.MessageId));
        Assert.Equal((MessageState.Sent, house.Buyer.Id), ((await house.FindAsync(id)).State, (await house.FindAsync(id)).AskedAgainBy));
    }

    [Theory]
    [InlineData("nothing", MessageState.Sent)]
    [InlineData("the wish ended", MessageState.Dropped)]
    [InlineData("its owner left", MessageState.Dropped)]
    [InlineData("the day passed", MessageState.Dropped)]
    public async Task A_daily_mail_that_waited_is_asked_for_again_before_it_is_sent(string since, MessageState end)
    {
        await using var house = await MailHouse.OpenAsync();
        var id = await house.PutDueAsync();
        await house.InLedgerAsync(async db =>
        {
            switch (since)
            {
                case "the wish ended": (await db.DueMails.SingleAsync(Stop)).End(house.Clock.Now); break;
                case "its owner left": (await db.People.SingleAsync(person => person.Id == house.Buyer.Id, Stop)).Leave(); break;
                case "the day passed": house.Clock.Now += TimeSpan.FromDays(1); break;
            }

            await db.SaveChangesAsync(Stop);
        });

        await house.Node().SendNextAsync(Stop);

        Assert.Equal((end, end == MessageState.Sent ? 1 : 0), ((await house.FindAsync(id)).State, house.Office.Taken.Count));
    }

    [Fact]
    public async Task A_refusal_for_good_fails_with_the_servers_words_and_can_be_sent_again()
    {
        await using var house = await MailHouse.OpenAsync();
        var id = await house.PutAsync();
        house.Office.RefusesRecipients = new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "No such bean here");

        await house.Node().SendNextAsync(Stop);
        house.Clock.Now += TimeSpan.FromDays(1);
        var again = await house.Node().SendNextAsync(Stop);
        var failed = await house.FindAsync(id);
        house.Office.RefusesRecipients = null;
        await house.ChangeAsync(id, message => message.SendAgain(house.Buyer.Id, house.Clock.Now));
        await house.Node().SendNextAsync(Stop);

        Assert.False(again);
        Assert.Equal(MessageState.Failed, failed.State);
        Assert.StartsWith("The mail server answered 550: No such bean here", failed.Trouble, StringComparison.Ordinal);
        Assert.Equal(failed.MessageId, Assert.Single(house.Office.Taken).MessageId);
    }

    /// <summary>550 to the sender is about the house's own address (RFC 5321, section 3.3): a wrong setting fails no message for good.</summary>
    [Fact]
    public async Task A_refusal_of_the_houses_own_address_is_tried_again()
    {
        await using var house = await MailHouse.OpenAsync();
        var id = await house.PutAsync();
        house.Office.RefusesSenders = new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "No such roaster here");

        await house.Node().SendNextAsync(Stop);
        var waiting = await house.FindAsync(id);
        house.Office.RefusesSenders = null;
        house.Clock.Now += TimeSpan.FromDays(1);
        await house.Node().SendNextAsync(Stop);

        Assert.Equal(MessageState.Queued, waiting.State);
        Assert.Contains("No such roaster here", waiting.Trouble, StringComparison.Ordinal);
        Assert.Single(house.Office.Taken);
    }

    /// <summary>452 is "not now" by RFC 5321, section 4.2.1, also as an answer to the text: the server says that it has not taken it over.</summary>
    [Fact]
    public async Task A_server_without_room_is_asked_again_later()
    {
        await using var house = await MailHouse.OpenAsync();
        var id = await house.PutAsync();
        house.Office.RefusesText = new SmtpResponse(SmtpReplyCode.InsufficientStorage, "The bins are full");

        await house.Node().SendNextAsync(Stop);
        var full = await house.FindAsync(id);
        house.Office.RefusesText = null;
        house.Clock.Now += TimeSpan.FromMinutes(1);
        await house.Node().SendNextAsync(Stop);

        Assert.Equal((MessageState.Queued, "The mail server answered 452: The bins are full"), (full.State, full.Trouble));
        Assert.Equal(MessageState.Sent, (await house.FindAsync(id)).State);
        Assert.Single(house.Office.Taken);
    }

    [Fact]
    public async Task Where_no_server_answers_it_is_tried_for_a_while_and_then_has_failed()
    {
        await using var house = await MailHouse.OpenAsync();
        var id = await house.PutAsync();
        var node = house.Node(PostOffice.FreePort());

        while (await node.SendNextAsync(Stop))
        {
            house.Clock.Now = Later(await house.FindAsync(id), house.Clock.Now);
        }

        var failed = await house.FindAsync(id);
        Assert.Equal((MessageState.Failed, 7), (failed.State, failed.Tries));
        Assert.True(failed.EndedAt - failed.At > TimeSpan.FromHours(12));
    }

    [Theory]
    [InlineData("seven green beans", MessageState.Sent)]
    [InlineData("wrong", MessageState.Queued)]
    [InlineData(null, MessageState.Queued)]
    public async Task The_server_asks_for_the_password_of_the_settings(string? password, MessageState state)
    {
        await using var house = await MailHouse.OpenAsync(asksForPassword: true);
        var id = await house.PutAsync();

        await house.Node(user: password is null ? null : "ledger", password: password).SendNextAsync(Stop);

        var tried = await house.FindAsync(id);
        Assert.Equal(state, tried.State);
        Assert.Equal(state == MessageState.Sent ? null : "The mail server does not accept the user or the password of the settings.", tried.Trouble);
    }

    [Fact]
    public async Task Of_several_nodes_one_sends_a_message()
    {
        await using var house = await MailHouse.OpenAsync();
        await house.PutAsync();

        var took = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => house.Node().SendNextAsync(Stop), Stop)));

        Assert.Equal(1, took.Count(one => one));
        Assert.Single(house.Office.Taken);
    }

    [Fact]
    public async Task A_node_that_fell_away_before_the_text_loses_nothing_and_one_that_did_later_leaves_it_in_doubt()
    {
        await using var house = await MailHouse.OpenAsync();
        var (early, late) = (await house.PutAsync(), await house.PutAsync());
        await house.ChangeAsync(early, message => message.Take("a node that dies", house.Clock.Now));
        await house.ChangeAsync(late, message =>
        {
            message.Take("a node that dies", house.Clock.Now);
            message.BeginText("a node that dies", house.Clock.Now);
        });

        var tooEarly = await house.Node().SendNextAsync(Stop);
        house.Clock.Now += Message.Silence + TimeSpan.FromSeconds(1);
        await house.Node().SendNextAsync(Stop);
        await house.Node().SendNextAsync(Stop);

        Assert.False(tooEarly);
        Assert.Equal((MessageState.Sent, 2), ((await house.FindAsync(early)).State, (await house.FindAsync(early)).Tries));
        Assert.Equal(MessageState.MayHaveArrived, (await house.FindAsync(late)).State);
        Assert.Single(house.Office.Taken);
    }

    private static DateTimeOffset Later(Message message, DateTimeOffset now) => message.NextTryAt > now ? message.NextTryAt : now;
}
