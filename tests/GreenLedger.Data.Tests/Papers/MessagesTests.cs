using System.Text;
using GreenLedger.Data.Due;
using GreenLedger.Data.Papers;
using GreenLedger.Domain.Due;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Papers;

public sealed class MessagesTests(Ledgers ledgers) : IClassFixture<Ledgers>
{
    private static readonly DateTimeOffset Now = new(2026, 11, 26, 9, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Today = new(2026, 11, 26);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task What_waits_longest_is_sent_first_and_what_another_node_has_is_not(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            var (taken, later, sent) = (Message("taken", 0), Message("later", 1), Message("sent", 0));
            taken.Take("node", Now);
            sent.Take("node", Now);
            sent.Arrive("node", Now);
            db.AddRange(taken, later, sent, Message("second", -1), Message("first", -2));
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        Assert.Equal(["first", "second"], await read.Messages.ToSend(Now).Select(message => message.MessageId).ToListAsync(Stop));
        Assert.Equal(["first", "second", "taken", "later"], await read.Messages.ToSend(Now + Domain.Papers.Message.Silence + TimeSpan.FromSeconds(1)).Select(message => message.MessageId).ToListAsync(Stop));
        Assert.Equal(["later", "taken", "second", "first"], (await new MessageQuery(read).ListAsync(MessageState.Queued, 0, 9, Stop)).Select(row => row.MessageId));
        Assert.Equal("text of first", Encoding.UTF8.GetString((await read.Messages.SingleAsync(message => message.MessageId == "first", Stop)).Bytes));
    }

    [Theory, EveryEngine]
    public async Task Two_nodes_that_take_a_message_at_once_are_told_apart(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        await using (var db = ledger.Open())
        {
            db.Add(Message("only", 0));
            await db.SaveChangesAsync(Stop);
        }

        await using var one = ledger.Open();
        await using var other = ledger.Open();
        (await one.Messages.SingleAsync(Stop)).Take("one", Now);
        (await other.Messages.SingleAsync(Stop)).Take("other", Now);
        await one.SaveChangesAsync(Stop);

        await Assert.ThrowsAsync<DbUpdateConcurrencyException>(() => other.SaveChangesAsync(Stop));
    }

    [Theory, EveryEngine]
    public async Task A_daily_mail_takes_its_day_once(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var person = new Person("Tilda Brand", Role.Buyer);
        var mail = new DueMail(person.Id, Now);
        await using (var db = ledger.Open())
        {
            db.AddRange(person, mail);
            await db.SaveChangesAsync(Stop);
        }

        var took = await Task.WhenAll(Enumerable.Range(0, 5).Select(async _ =>
        {
            await using var db = ledger.Open();
            return await db.DueMails.TakeDayAsync(mail.Id, Today, Stop);
        }));

        await using var read = ledger.Open();
        Assert.Equal(1, took.Count(one => one));
        Assert.Empty(await read.DueMails.Lacking(Today).ToListAsync(Stop));
        Assert.Single(await read.DueMails.Lacking(Today.AddDays(1)).ToListAsync(Stop));
    }

    private static Message Message(string id, int minutes) =>
        new(MessagePurpose.Due, new MessageText("tilda@sorrel-roasters.example", "Due", id, Encoding.UTF8.GetBytes("text of " + id)), null, null, Now.AddMinutes(minutes));
}
