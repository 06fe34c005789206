using System.Net;
using System.Text;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Papers;

public sealed class AttachmentTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    /// <summary>Enough to tell the form from the others on the page.</summary>
    private static readonly Dictionary<string, string> Form = new() { ["ReturnUrl"] = "/" };

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task An_attached_file_comes_back_byte_for_byte_and_only_as_a_download()
    {
        var (_, offer, _) = await PapersHouse.AddAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var attachment = await AttachAsync(offer.Id, "Prueba de taza.pdf", PapersHouse.Pdf);

        var answer = await buyer.Client.GetAsync($"/Papers/Download/{attachment.Id}", Cancel);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal(PapersHouse.Pdf, await answer.Content.ReadAsByteArrayAsync(Cancel));
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition?.DispositionType);
        Assert.Equal("Prueba de taza.pdf", answer.Content.Headers.ContentDisposition?.FileNameStar);
        Assert.Contains("sandbox", string.Join(' ', answer.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(answer.Headers.GetValues("X-Content-Type-Options")));
    }

    [Theory]
    [InlineData("contract.exe", "MZ", "Files of this kind are not taken.")]
    [InlineData("programme.pdf", "MZ, and then more", "its content is something else")]
    [InlineData("photo.png", "GIF89a", "its content is something else")]
    [InlineData("empty.txt", "", "This file is empty")]
    public async Task A_file_that_is_not_taken_is_refused_in_a_sentence_and_nothing_is_stored(string name, string content, string sentence)
    {
        var (_, offer, _) = await PapersHouse.AddAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);

        var answer = await buyer.SendFormAsync(
            PapersHouse.AttachTo("Offer", offer.Id), Form, files: [("Input.File", name, Encoding.ASCII.GetBytes(content))]);

        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains(sentence, page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.False(await house.FromLedgerAsync(db => db.Attachments.AnyAsync(one => one.AboutId == offer.Id.Value, Cancel)));
        Assert.False(await house.FromLedgerAsync(db => db.StoredFiles.AnyAsync(file => file.Name == name, Cancel)));
    }

    [Fact]
    public async Task A_file_above_the_limit_is_refused_with_the_limit_in_the_sentence()
    {
        var (_, offer, _) = await PapersHouse.AddAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var large = new byte[(20 * 1024 * 1024) + 1];
        PapersHouse.Pdf.CopyTo(large, 0);

        var answer = await buyer.SendFormAsync(PapersHouse.AttachTo("Offer", offer.Id), Form, files: [("Input.File", "large.pdf", large)]);

        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains("larger than 20 MB", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_removal_asks_first_and_can_be_taken_back()
    {
        var (_, offer, _) = await PapersHouse.AddAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var attachment = await AttachAsync(offer.Id, "report.pdf", PapersHouse.Pdf);
        var asks = await buyer.ReadAsync($"/Papers/RemoveAttachment/{attachment.Id}?returnUrl=%2F");
        Assert.Contains("report.pdf", asks.Body!.TextContent, StringComparison.Ordinal);

        await buyer.PostAsync($"/Papers/RemoveAttachment/{attachment.Id}");
        Assert.Equal(HttpStatusCode.NotFound, (await buyer.Client.GetAsync($"/Papers/Download/{attachment.Id}", Cancel)).StatusCode);

        var back = await buyer.PostAsync($"/Papers/RemoveAttachment/{attachment.Id}?handler=PutBack");
        Assert.Equal(HttpStatusCode.Redirect, back.StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await buyer.Client.GetAsync($"/Papers/Download/{attachment.Id}", Cancel)).StatusCode);
    }

    [Theory]
    [InlineData(Role.Cupper)]
    [InlineData(Role.LeadCupper)]
    public async Task Who_may_not_see_offers_may_not_open_what_is_attached_to_them(Role role)
    {
        var (_, offer, _) = await PapersHouse.AddAsync(house);
        var attachment = await AttachAsync(offer.Id, "contract.pdf", PapersHouse.Pdf);
        var cupper = await house.BrowserAsync(role);
        var script = await house.ScriptAsync(role);

        Assert.Equal(HttpStatusCode.NotFound, (await cupper.Client.GetAsync($"/Papers/Download/{attachment.Id}", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await script.GetAsync($"/api/papers/attachments?about=offer&id={offer.Id}", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await script.GetAsync($"/api/papers/attachments/{attachment.Id}/file", Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_viewer_reads_attachments_and_changes_none()
    {
        var (_, offer, _) = await PapersHouse.AddAsync(house);
        var attachment = await AttachAsync(offer.Id, "report.pdf", PapersHouse.Pdf);
        var viewer = await house.BrowserAsync(Role.Viewer);

        Assert.Equal(HttpStatusCode.OK, (await viewer.Client.GetAsync($"/Papers/Download/{attachment.Id}", Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await viewer.Client.GetAsync($"/Papers/RemoveAttachment/{attachment.Id}", Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_lead_cupper_attaches_to_a_sample_and_not_to_an_offer()
    {
        var (_, offer, sample) = await PapersHouse.AddAsync(house);
        var lead = await house.BrowserAsync(Role.LeadCupper);

        var taken = await lead.SendFormAsync(
            PapersHouse.AttachTo("Sample", sample.Id), Form, files: [("Input.File", "photo.jpg", [0xFF, 0xD8, 0xFF, 0xE0])]);

        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await lead.Client.GetAsync(PapersHouse.AttachTo("Offer", offer.Id), Cancel)).StatusCode);
    }

    [Fact]
    public async Task A_script_lists_attachments_and_fetches_the_file()
    {
        var (_, offer, _) = await PapersHouse.AddAsync(house);
        var attachment = await AttachAsync(offer.Id, "report.pdf", PapersHouse.Pdf);
        var script = await house.ScriptAsync(Role.Viewer);

        var list = await script.GetStringAsync($"/api/papers/attachments?about=offer&id={offer.Id}", Cancel);
        var file = await script.GetAsync($"/api/papers/attachments/{attachment.Id}/file", Cancel);

        Assert.Contains("\"fileName\":\"report.pdf\"", list, StringComparison.Ordinal);
        Assert.Contains($"\"sizeBytes\":{PapersHouse.Pdf.Length}", list, StringComparison.Ordinal);
        Assert.Equal(PapersHouse.Pdf, await file.Content.ReadAsByteArrayAsync(Cancel));
        Assert.Equal("attachment", file.Content.Headers.ContentDisposition?.DispositionType);
    }

    private async Task<Attachment> AttachAsync(Id<Offer> offer, string name, byte[] bytes)
    {
        var buyer = await house.BrowserAsync(Role.Buyer);
        var answer = await buyer.SendFormAsync(PapersHouse.AttachTo("Offer", offer), Form, files: [("Input.File", name, bytes)]);
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        return await house.FromLedgerAsync(db => db.Attachments.SingleAsync(one => one.AboutId == offer.Value, Cancel));
    }
}
