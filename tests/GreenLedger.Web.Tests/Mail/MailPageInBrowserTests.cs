using System.Text;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.InBrowser;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Mail;

public sealed class MailPageInBrowserTests(Chromium chromium)
{
    private const string Long = "exports.department.of.quality@cerro-alto-exportadores-unidos.example";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(Chromium.Wide)]
    [InlineData(Chromium.Phone)]
    public async Task What_may_have_arrived_is_sent_again_only_after_asking(int width)
    {
        await using var house = new HouseFixture();
        await house.OpenHouseAsync();
        house.Serve();
        await FillAsync(house);
        await using var window = await chromium.OpenAsync(house.ClientOptions.BaseAddress, width);
        await window.SignInAsync(HouseFixture.EmailOf(Role.Buyer), HouseFixture.Password);
        var forms = new Forms(window);
        var asked = new List<string>();
        window.Page.Dialog += async (_, dialog) =>
        {
            asked.Add(dialog.Message);
            await (asked.Count == 1 ? dialog.DismissAsync() : dialog.AcceptAsync());
        };

        await forms.GoAsync("/Summaries/Mail?state=MayHaveArrived");
        Assert.Empty(await window.ViolationsAsync());
        Assert.Equal(0, await window.SidewaysAsync());
        await window.Page.Locator("main table button").ClickAsync();
        var dismissed = await StateAsync(house);
        await forms.SendAsync("Send again");

        Assert.Equal(2, asked.Count);
        Assert.Contains($"It may lie with {Long} already.", asked[0], StringComparison.Ordinal);
        Assert.Equal((MessageState.MayHaveArrived, MessageState.Queued), (dismissed, await StateAsync(house)));
        await forms.GoAsync("/Summaries/Mail");
        Assert.Empty(await window.ViolationsAsync());
        Assert.Equal(0, await window.SidewaysAsync());
    }

    private static Task<MessageState> StateAsync(HouseFixture house) =>
        house.FromLedgerAsync(db => db.Messages.Where(message => message.Address == Long).Select(message => message.State).SingleAsync(Stop));

    private static Task FillAsync(HouseFixture house) => house.InLedgerAsync(async db =>
    {
        var now = DateTimeOffset.UtcNow.AddHours(-1);
        var (doubtful, failed) = (Message(Long, now), Message("ana@sao-joao.example", now));
        doubtful.Take("node", now);
        doubtful.LoseSight("The connection broke after the text had gone out, before the mail server answered (no answer in time).", now);
        failed.Take("node", now);
        failed.Fail("node", "The mail server answered 550: No such user here", now);
        db.AddRange(doubtful, failed);
        await db.SaveChangesAsync(Stop);
    });

    private static Message Message(string to, DateTimeOffset at) =>
        new(MessagePurpose.Due, new MessageText(to, "Due on 26 November 2026: 12 lines, 3 late", $"{Guid.NewGuid():N}@sorrel-roasters.example", Encoding.UTF8.GetBytes("text")), null, null, at);
}
