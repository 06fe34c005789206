using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Arrivals;
using Microsoft.EntityFrameworkCore;
using MimeKit;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Mail;

/// <summary>Confirmations, letters of claims and arrival reports to contacts of a supplier, by a real mail server.</summary>
public sealed class PapersByMailTests
{
    private const string Ana = "ana@cerro-alto.example";
    private const string Bento = "bento@cerro-alto.example";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_confirmation_goes_to_contacts_that_receive_contract_papers_and_stands_on_the_contract()
    {
        await using var office = new PostOffice();
        await using var house = Open(office);
        var lot = await PlantedAsync(house, Receives.ContractPapers);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var address = $"/Contracts/Send/{lot.Contract}";

        var form = await buyer.ReadAsync(address);
        var sent = await buyer.SendFormAsync(address, new Dictionary<string, string> { ["Input.Subject"] = "Confirmação P26" });
        var mail = Assert.Single(await office.TakenAsync(1, Stop));

        Assert.Equal([Ana], form.QuerySelectorAll("input[name='Input.To']").Select(box => box.GetAttribute("value")!));
        Assert.Contains("confirmação de compra", form.QuerySelector("#Input_Text")!.TextContent, StringComparison.Ordinal); // Ana reads Portuguese
        Assert.Equal(HttpStatusCode.Redirect, sent.StatusCode);
        Assert.Equal(Ana, Assert.Single(mail.To.Mailboxes).Address);
        Assert.Contains("3.2165 USD for one lb", await PdfTextAsync(mail), StringComparison.Ordinal); // the 321.65 US cents of the contract, 100 to the dollar
        Assert.Contains(Ana, (await buyer.ReadAsync($"/Contracts/Contract/{lot.Contract}")).QuerySelector("[aria-label='Sent by mail']")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_claim_and_an_arrival_are_sent_by_a_script_once_for_one_submission()
    {
        await using var office = new PostOffice();
        await using var house = Open(office);
        var lot = await PlantedAsync(house, Receives.Claims | Receives.ArrivalReports);
        using var script = await house.ScriptAsync(Role.Buyer);
        var claim = (await (await PostAsync(script, $"/api/arrivals/{lot.Arrival}/claims", new { on = "2026-11-20", grounds = new[] { "weight" } })).Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid();
        var letter = new { to = new[] { Ana }, language = "en", submission = Guid.NewGuid() };

        var answers = new[] { await PostAsync(script, $"/api/arrivals/claims/{claim}/letter/send", letter), await PostAsync(script, $"/api/arrivals/claims/{claim}/letter/send", letter) };
        var report = await PostAsync(script, $"/api/arrivals/{lot.Arrival}/report/send", new { to = new[] { Ana }, language = "en" });
        var mails = await office.TakenAsync(2, Stop);

        Assert.All([.. answers, report], answer => Assert.Equal(HttpStatusCode.Accepted, answer.StatusCode));
        Assert.All(mails, mail => Assert.True(mail.Attachments.Any()));
        var texts = new[] { await PdfTextAsync(mails[0]), await PdfTextAsync(mails[1]) };
        Assert.All(texts, text => Assert.Contains("639.09", text, StringComparison.Ordinal)); // handbook, trade 8, example G
        Assert.Contains("What arrived", Assert.Single(texts, text => text.Contains("90.125 kg at 321.65 ¢/lb", StringComparison.Ordinal)), StringComparison.Ordinal); // handbook, trade 8, example G
        var buyer = await house.BrowserAsync(Role.Buyer);
        Assert.Contains(Ana, (await buyer.ReadAsync($"/Arrivals/Claim/{claim}")).QuerySelector("[aria-label='Sent by mail']")!.TextContent, StringComparison.Ordinal);
        Assert.Contains(Ana, (await buyer.ReadAsync($"/Arrivals/Arrival/{lot.Arrival}")).QuerySelector("[aria-label='Sent by mail']")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_report_on_an_arrival_goes_out_in_the_language_that_is_chosen_and_remembered()
    {
        await using var office = new PostOffice();
        await using var house = Open(office);
        var lot = await PlantedAsync(house, Receives.ArrivalReports);
        var buyer = await house.BrowserAsync(Role.Buyer);

        var usual = await buyer.ReadAsync($"/Arrivals/SendArrival/{lot.Arrival}");
        var sent = await buyer.SendFormAsync($"/Arrivals/SendArrival/{lot.Arrival}?Language=fr", new Dictionary<string, string> { ["Input.Subject"] = "Arrivage" });
        var mail = Assert.Single(await office.TakenAsync(1, Stop));
        var next = await buyer.ReadAsync($"/Arrivals/SendArrival/{lot.Arrival}");

        Assert.Equal("pt", usual.QuerySelector("#language option[selected]")!.GetAttribute("value")); // Ana's own, while nothing is remembered
        Assert.Equal(HttpStatusCode.Redirect, sent.StatusCode);
        Assert.Contains("Veuillez trouver ci-joint notre rapport", mail.TextBody, StringComparison.Ordinal);
        Assert.Contains("L’arrivage est en dessous de ce qui a été convenu.", await PdfTextAsync(mail), StringComparison.Ordinal);
        Assert.Equal("fr", next.QuerySelector("#language option[selected]")!.GetAttribute("value"));
    }

    [Fact]
    public async Task Who_does_not_receive_such_papers_is_refused_and_nothing_is_sent()
    {
        await using var office = new PostOffice();
        await using var house = Open(office);
        var lot = await PlantedAsync(house, Receives.ContractPapers);
        using var script = await house.ScriptAsync(Role.Buyer);

        var refused = await PostAsync(script, $"/api/contracts/{lot.Contract}/confirmation/send", new { to = new[] { Bento } });
        var nobody = await PostAsync(script, $"/api/contracts/{lot.Contract}/confirmation/send", new { to = Array.Empty<string>() });

        Assert.All([refused, nobody], answer => Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode));
        Assert.Contains("contacts that receive contract papers", await refused.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Equal(0, await house.FromLedgerAsync(db => db.Messages.CountAsync(Stop)));
    }

    [Fact]
    public async Task Without_a_mail_server_page_and_script_say_so()
    {
        await using var house = new HouseFixture();
        var lot = await PlantedAsync(house, Receives.ContractPapers);
        using var script = await house.ScriptAsync(Role.Buyer);

        var refused = await PostAsync(script, $"/api/contracts/{lot.Contract}/confirmation/send", new { to = new[] { Ana } });
        var page = await (await house.BrowserAsync(Role.Buyer)).ReadAsync($"/Contracts/Send/{lot.Contract}");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("No mail server is set", await refused.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Contains("No mail server is set", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    private static HouseFixture Open(PostOffice office)
    {
        var house = new HouseFixture();
        foreach (var (key, value) in office.Settings)
        {
            house.Settings[key] = value;
        }

        return house;
    }

    private static async Task<ArrivedLot> PlantedAsync(HouseFixture house, Receives ana)
    {
        var lot = await ArrivedLot.FillAsync(house);
        await house.InLedgerAsync(async db =>
        {
            var supplier = await db.Contracts.Where(contract => contract.Id == lot.Contract).Select(contract => contract.SupplierId).SingleAsync(Stop);
            db.AddRange(new SupplierContact(supplier, "Ana Duarte", Ana, "pt", ana), new SupplierContact(supplier, "Bento Reis", Bento, "en", Receives.Feedback));
            await db.SaveChangesAsync(Stop);
        });
        return lot;
    }

    private static Task<HttpResponseMessage> PostAsync(HttpClient script, string address, object body) => script.PostAsJsonAsync(new Uri(address, UriKind.Relative), body, Stop);

    private static async Task<string> PdfTextAsync(MimeMessage mail)
    {
        using var bytes = new MemoryStream();
        await Assert.Single(mail.Attachments.OfType<MimePart>()).Content!.DecodeToAsync(bytes, Stop);
        using var pdf = PdfDocument.Open(bytes.ToArray());
        return string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
    }
}
