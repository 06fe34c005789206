using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Mail;
using Microsoft.EntityFrameworkCore;
using MimeKit;
using SmtpServer.Protocol;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Summaries;

/// <summary>Feedback to a supplier by a real mail server.</summary>
public sealed class FeedbackMailTests
{
    private const string Ana = "ana@sao-joao.example";
    private const string Bento = "bento@sao-joao.example";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_goes_to_whom_it_is_sent_and_nothing_of_other_suppliers_is_in_it()
    {
        await using var office = new PostOffice();
        await using var house = Open(office);
        var (supplier, sample, numbers) = await PlantedAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);

        var offered = (await buyer.ReadAsync(Page(supplier))).QuerySelectorAll("input[name='Input.To']").Select(box => box.GetAttribute("value"));
        var sent = await SendAsync(house, supplier, sample, Ana);
        var mail = Assert.Single(await office.TakenAsync(1, Stop));

        Assert.Contains(Ana, offered);
        Assert.DoesNotContain(Bento, offered); // is sent claims alone
        Assert.Equal(HttpStatusCode.Redirect, sent.StatusCode);
        Assert.Equal(Ana, Assert.Single(mail.To.Mailboxes).Address);
        var file = Assert.Single(mail.Attachments.OfType<MimePart>());
        using var bytes = new MemoryStream();
        await file.Content!.DecodeToAsync(bytes, Stop);
        using var pdf = PdfDocument.Open(bytes.ToArray());
        var text = string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
        Assert.Contains("86", text, StringComparison.Ordinal); // its own score is told
        Assert.Empty(FeedbackLeakTests.Leaks($"{mail.Headers.Select(header => header.ToString()).Aggregate((all, one) => all + one)} {mail.TextBody} {file.FileName} {text}", numbers));
        Assert.Contains(Ana, (await buyer.ReadAsync("/Summaries/Mail")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_mail_is_shown_with_the_servers_words_and_sent_again_on_a_persons_word_by_page_and_script()
    {
        await using var office = new PostOffice { RefusesRecipients = new SmtpResponse(SmtpReplyCode.MailboxUnavailable, "Nobody of that name") };
        await using var house = Open(office);
        var (supplier, sample, _) = await PlantedAsync(house);
        await SendAsync(house, supplier, sample, Ana);
        var buyer = await house.BrowserAsync(Role.Buyer);
        using var script = await house.ScriptAsync(Role.Buyer);

        var message = await EndedAsync(script);
        var page = (await buyer.ReadAsync("/Summaries/Mail?state=Failed")).QuerySelector("main")!.TextContent;
        var viewers = await (await house.BrowserAsync(Role.Viewer)).ReadAsync("/Summaries/Mail");
        office.RefusesRecipients = null;
        var again = await buyer.SendFormAsync("/Summaries/Mail", new Dictionary<string, string>(), "Again");
        var taken = Assert.Single(await office.TakenAsync(1, Stop));
        await EndedAsync(script);
        var twice = await script.PostAsync(new Uri($"/api/summaries/messages/{message.GetProperty("id").GetGuid()}/send-again", UriKind.Relative), null, Stop);

        Assert.Contains("Nobody of that name", page, StringComparison.Ordinal);
        Assert.Null(viewers.QuerySelector("form[action*='handler=Again']"));
        Assert.Equal(HttpStatusCode.Redirect, again.StatusCode);
        Assert.Equal(message.GetProperty("messageId").GetString(), taken.MessageId);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, twice.StatusCode);
        Assert.Contains("was sent: send a new one instead", await twice.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_address_that_is_no_contact_of_the_supplier_is_refused_and_nothing_is_sent()
    {
        await using var office = new PostOffice();
        await using var house = Open(office);
        var (supplier, sample, _) = await PlantedAsync(house);

        var refused = await SendAsync(house, supplier, sample, "rival@other.example");

        Assert.Contains("Choose whom to send it to.", await refused.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Messages.CountAsync(Stop)));
    }

    [Fact]
    public async Task A_form_that_is_sent_twice_sends_one_message_and_a_new_opening_another()
    {
        await using var office = new PostOffice();
        await using var house = Open(office);
        var (supplier, sample, _) = await PlantedAsync(house);
        var submission = Guid.NewGuid();

        var answers = new[] { await SendAsync(house, supplier, sample, Ana, submission), await SendAsync(house, supplier, sample, Ana, submission) };
        var once = await house.FromLedgerAsync(db => db.Messages.CountAsync(Stop));
        await SendAsync(house, supplier, sample, Ana);

        Assert.All(answers, answer => Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode));
        Assert.Equal((1, 2), (once, await house.FromLedgerAsync(db => db.Messages.CountAsync(Stop))));
        Assert.Equal(2, await house.FromLedgerAsync(db => db.FeedbackCopies.CountAsync(copy => copy.IsMailed, Stop)));
    }

    [Fact]
    public async Task What_was_taken_as_a_PDF_is_opened_later_as_it_left_and_a_preview_is_not_kept()
    {
        await using var office = new PostOffice();
        await using var house = Open(office);
        var (supplier, sample, _) = await PlantedAsync(house);
        await SendAsync(house, supplier, sample, Ana, handler: "");
        var none = await house.FromLedgerAsync(db => db.FeedbackCopies.CountAsync(Stop));

        var taken = await (await SendAsync(house, supplier, sample, Ana, handler: "Pdf")).Content.ReadAsByteArrayAsync(Stop);

        var lot = await house.FromLedgerAsync(db => db.Samples.Where(one => one.Id == new Id<Domain.Samples.Sample>(sample)).Select(one => one.LotId).SingleAsync(Stop));
        var viewer = await house.BrowserAsync(Role.Viewer);
        var links = new[] { $"/Offers/Supplier/{supplier}", $"/Offers/Lot/{lot}" }.Select(async page => Assert.Single((await viewer.ReadAsync(page)).QuerySelectorAll("a[href*='/Summaries/Told/']")).GetAttribute("href")!);
        var addresses = await Task.WhenAll(links);
        var opened = await viewer.Client.GetAsync(new Uri(addresses[0], UriKind.Relative), Stop);
        Assert.Equal(0, none);
        Assert.Equal(addresses[0], addresses[1]);
        Assert.Equal(taken, await opened.Content.ReadAsByteArrayAsync(Stop));
        Assert.NotEqual(HttpStatusCode.OK, (await (await house.BrowserAsync(Role.Cupper)).Client.GetAsync(new Uri(addresses[0], UriKind.Relative), Stop)).StatusCode);
    }

    [Fact]
    public async Task A_preview_keeps_no_language_and_what_is_sent_does()
    {
        await using var office = new PostOffice();
        await using var house = Open(office);
        var (supplier, sample, _) = await PlantedAsync(house);
        var before = await LanguageAsync(house, supplier);

        var preview = await SendAsync(house, supplier, sample, Ana, handler: "", language: "fr");
        var previewed = await LanguageAsync(house, supplier);
        await SendAsync(house, supplier, sample, Ana, language: "fr");

        Assert.Equal(HttpStatusCode.OK, preview.StatusCode);
        Assert.NotEqual("fr", before);
        Assert.Equal((before, "fr"), (previewed, await LanguageAsync(house, supplier)));
    }

    private static Task<string?> LanguageAsync(HouseFixture house, Guid supplier) =>
        house.FromLedgerAsync(db => db.Suppliers.Where(one => one.Id == new Id<Supplier>(supplier)).Select(one => one.Language).SingleAsync(Stop));

    private static HouseFixture Open(PostOffice office)
    {
        var house = new HouseFixture();
        foreach (var (key, value) in office.Settings)
        {
            house.Settings[key] = value;
        }

        return house;
    }

    private static async Task<(Guid Supplier, Guid Sample, IReadOnlyList<string> Numbers)> PlantedAsync(HouseFixture house)
    {
        var planted = await new FeedbackLeakTests(house).PlantedAsync();
        await house.InLedgerAsync(async db =>
        {
            db.Add(new SupplierContact(new Id<Supplier>(planted.Supplier), "Ana Duarte", Ana, "pt", Receives.Feedback));
            db.Add(new SupplierContact(new Id<Supplier>(planted.Supplier), "Bento Reis", Bento, "pt", Receives.Claims));
            await db.SaveChangesAsync(Stop);
        });
        return planted;
    }

    private static string Page(Guid supplier) => $"/Summaries/Feedback?Supplier={supplier}";

    private static async Task<HttpResponseMessage> SendAsync(HouseFixture house, Guid supplier, Guid sample, string to, Guid? submission = null, string handler = "Mail", string language = "pt")
    {
        var browser = await house.BrowserAsync(Role.Buyer);
        var token = (await browser.ReadAsync(Page(supplier))).QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        using var form = new FormUrlEncodedContent([new("__RequestVerificationToken", token), new("Input.Samples", $"{sample}"), new("Input.Language", language), new("Input.Submission", $"{submission ?? Guid.NewGuid()}"), new("Input.Message", "Muito obrigado."), new("Input.To", to)]);
        return await browser.Client.PostAsync(new Uri(Page(supplier) + (handler.Length == 0 ? "" : $"&handler={handler}"), UriKind.Relative), form, Stop);
    }

    /// <summary>The newest message, once it is no longer to be sent.</summary>
    private static async Task<JsonElement> EndedAsync(HttpClient script)
    {
        for (var tries = 0; tries < 300; tries++)
        {
            var newest = (await script.GetFromJsonAsync<JsonElement>(new Uri("/api/summaries/messages", UriKind.Relative), Stop))[0];
            if (newest.GetProperty("state").GetString() != "queued")
            {
                return newest;
            }

            await Task.Delay(200, Stop);
        }

        throw new TimeoutException("The message stayed in the outbox.");
    }
}
