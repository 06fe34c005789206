using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Data.Due;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.People;
using GreenLedger.Web.Due;
using GreenLedger.Web.Tests.Arrivals;
using GreenLedger.Web.Tests.Cupping;
using GreenLedger.Web.Tests.Mail;
using GreenLedger.Web.Tests.Shipments;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using MimeKit;

namespace GreenLedger.Web.Tests.Due;

/// <summary>The daily mail of what is due, by a real mail server. The house's clock shows half past five to begin with.</summary>
public sealed class DueMailTests
{
    private static readonly DateTimeOffset Early = new(2026, 11, 26, 5, 30, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_says_what_the_page_says_to_that_person_and_no_more()
    {
        await using var office = new PostOffice();
        await using var house = Open(office, new StoppedClock(Early.AddHours(1)));
        var contract = await SignedContract.StoreAsync(house, ApprovalRule.Replace);
        await ArrivedLot.FillAsync(house);
        var table = await Table.LayOutAsync(house);
        await house.SeatAsync(table, Role.Cupper, Role.LeadCupper);
        foreach (var role in new[] { Role.Buyer, Role.Cupper, Role.Viewer })
        {
            await (await house.BrowserAsync(role)).SendFormAsync("/Myself/DueMail", new Dictionary<string, string>(), "Begin");
        }

        await LookAsync(house);
        var mails = await office.TakenAsync(3, Stop);

        foreach (var role in new[] { Role.Buyer, Role.Cupper, Role.Viewer })
        {
            var mail = mails.Single(one => one.To.Mailboxes.Single().Address == HouseFixture.EmailOf(role));
            var shown = (await (await house.ScriptAsync(role)).GetFromJsonAsync<JsonElement>(new Uri("/api/due?withinDays=7", UriKind.Relative), Stop)).EnumerateArray().Select(line => line.GetProperty("what").GetString()!);
            var told = mail.TextBody!.Split('\n').Where(line => line.StartsWith("- ", StringComparison.Ordinal)).Select(line => line.TrimEnd()[(line.IndexOf(": ", StringComparison.Ordinal) + 2)..]);
            Assert.Equal(shown.Order(StringComparer.Ordinal), told.Order(StringComparer.Ordinal));
            Assert.StartsWith("Due on 26 November 2026: ", mail.Subject, StringComparison.Ordinal);
        }

        Assert.Contains(contract.Ref, Text(mails, Role.Buyer), StringComparison.Ordinal);
        Assert.DoesNotContain(contract.Ref, Text(mails, Role.Cupper), StringComparison.Ordinal);
        Assert.All(table.Secrets, secret => Assert.DoesNotContain(secret, Text(mails, Role.Cupper), StringComparison.Ordinal));
    }

    [Fact]
    public async Task It_comes_once_a_day_from_the_houses_hour_on_until_it_is_ended()
    {
        await using var office = new PostOffice();
        var clock = new StoppedClock(Early);
        await using var house = Open(office, clock);
        await SignedContract.StoreAsync(house, ApprovalRule.Replace);
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync("/Myself/DueMail", new Dictionary<string, string>(), "Begin");

        await LookAsync(house);
        var early = await CountAsync(house);
        clock.Now = Early.AddMinutes(30);
        await Task.WhenAll(LookAsync(house), LookAsync(house), LookAsync(house));
        await LookAsync(house);
        var first = await CountAsync(house);
        clock.Now = Early.AddDays(1).AddHours(1);
        await LookAsync(house);
        var second = await CountAsync(house);
        await buyer.SendFormAsync("/Myself/DueMail", new Dictionary<string, string>(), "End");
        clock.Now = Early.AddDays(2).AddHours(1);
        await LookAsync(house);

        Assert.Equal((0, 1, 2, 2), (early, first, second, await CountAsync(house)));
    }

    [Fact]
    public async Task A_wish_that_was_ended_and_begun_again_on_one_day_brings_no_second_mail()
    {
        await using var office = new PostOffice();
        var clock = new StoppedClock(Early.AddHours(1));
        await using var house = Open(office, clock);
        await SignedContract.StoreAsync(house, ApprovalRule.Replace);
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync("/Myself/DueMail", new Dictionary<string, string>(), "Begin");
        await LookAsync(house);

        await buyer.SendFormAsync("/Myself/DueMail", new Dictionary<string, string>(), "End");
        await buyer.SendFormAsync("/Myself/DueMail", new Dictionary<string, string>(), "Begin");
        await LookAsync(house);
        var sameDay = await CountAsync(house);
        clock.Now = Early.AddDays(1).AddHours(1);
        await LookAsync(house);

        Assert.Equal((1, 2), (sameDay, await CountAsync(house)));
    }

    [Fact]
    public async Task An_address_that_cannot_be_written_to_is_tried_once_a_day_and_its_owner_reads_why()
    {
        await using var office = new PostOffice();
        await using var house = Open(office, new StoppedClock(Early.AddHours(1)));
        await SignedContract.StoreAsync(house, ApprovalRule.Replace);
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync("/Myself/DueMail", new Dictionary<string, string>(), "Begin");
        await house.InLedgerAsync(db => db.Users.Where(account => account.Email == HouseFixture.EmailOf(Role.Buyer)).ExecuteUpdateAsync(set => set.SetProperty(account => account.Email, "no address at all"), Stop));

        await LookAsync(house);
        var lacking = await house.FromLedgerAsync(db => db.DueMails.Lacking(new DateOnly(2026, 11, 26)).CountAsync(Stop));

        Assert.Equal((0, 0), (lacking, await CountAsync(house)));
        Assert.Contains("The last one could not be written", (await buyer.ReadAsync("/Myself/DueMail")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_mail_server_the_pages_say_so_and_nothing_is_written()
    {
        await using var house = new HouseFixture();
        await SignedContract.StoreAsync(house, ApprovalRule.Replace);
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync("/Myself/DueMail", new Dictionary<string, string>(), "Begin");

        await LookAsync(house);

        Assert.Equal(0, await CountAsync(house));
        foreach (var page in new[] { "/Myself/DueMail", "/Summaries/Mail" })
        {
            Assert.Contains("No mail server is set", (await buyer.ReadAsync(page)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_hour_is_the_buyers_to_say()
    {
        await using var house = new HouseFixture();
        var buyer = await house.BrowserAsync(Role.Buyer);

        var wrong = await buyer.SendFormAsync("/Due/Habits", new Dictionary<string, string> { ["Input.MailHour"] = "24" });
        var saved = await buyer.SendFormAsync("/Due/Habits", new Dictionary<string, string> { ["Input.MailHour"] = "9" });

        Assert.Contains("between 0 and 23", (await TestBrowser.PageAsync(wrong)).QuerySelector("#Input_MailHour_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, saved.StatusCode);
        Assert.Contains("from 9:00 on", (await buyer.ReadAsync("/Myself/DueMail")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    private static HouseFixture Open(PostOffice office, StoppedClock clock)
    {
        var house = new HouseFixture { Replaces = services => services.AddSingleton<TimeProvider>(clock) };
        foreach (var (key, value) in office.Settings)
        {
            house.Settings[key] = value;
        }

        return house;
    }

    private static Task LookAsync(HouseFixture house) => house.Services.GetRequiredService<DueMailClock>().LookAsync(Stop);

    private static Task<int> CountAsync(HouseFixture house) => house.FromLedgerAsync(db => db.Messages.CountAsync(Stop));

    private static string Text(IReadOnlyList<MimeMessage> mails, Role role) => mails.Single(one => one.To.Mailboxes.Single().Address == HouseFixture.EmailOf(role)).TextBody!;
}
