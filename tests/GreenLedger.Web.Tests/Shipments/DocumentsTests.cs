using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Shipments;

public sealed class DocumentsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static readonly byte[] Pdf = "%PDF-1.4\n1 0 obj\n<<>>\nendobj\n%%EOF"u8.ToArray();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_shipments_checklist_follows_its_delivery_rule_destination_and_certificate()
    {
        var shipment = await AddAsync(await SignedContract.StoreAsync(house, incoterm: Incoterm.Cif, certificates: "organic"));

        var names = shipment.GetProperty("documents").EnumerateArray().Select(document => document.GetProperty("name").GetString()).ToList();

        // Handbook, trade 4.5 and 6.3: insurance under CIF, certificate of inspection for organic coffee into the EU.
        Assert.Contains("Insurance certificate", names);
        Assert.Contains("Certificate of inspection, organic", names);
        Assert.Equal(names.Count, shipment.GetProperty("documentsMissing").GetInt32());
        Assert.Equal("Bill of lading", names[0]);
    }

    [Fact]
    public async Task A_file_comes_with_its_document_and_is_handed_out_as_a_download_only()
    {
        var shipment = await AddAsync(await SignedContract.StoreAsync(house));
        var (id, bill) = (shipment.GetProperty("id").GetGuid(), shipment.GetProperty("documents")[0].GetProperty("id").GetGuid());
        var script = await house.ScriptAsync(Role.Buyer);

        var wrong = await SendFileAsync(script, id, bill, "bill.exe", "MZ"u8.ToArray());
        var taken = await SendFileAsync(script, id, bill, "bill.pdf", Pdf);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.StatusCode);
        var document = (await ReadAsync(taken)).GetProperty("documents")[0];
        Assert.Equal(("received", false), (document.GetProperty("state").GetString(), document.GetProperty("isMissing").GetBoolean()));
        var page = await (await house.BrowserAsync(Role.Viewer)).ReadAsync($"/Shipments/Shipment/{id}");
        var link = page.QuerySelector("#documents ~ * a[href^='/Papers/Download'], section a[href^='/Papers/Download']")!;
        var download = await (await house.BrowserAsync(Role.Viewer)).Client.GetAsync(link.GetAttribute("href"), Stop);
        Assert.Equal("attachment", download.Content.Headers.ContentDisposition!.DispositionType);
        Assert.Equal(Pdf, await download.Content.ReadAsByteArrayAsync(Stop));
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.BrowserAsync(Role.Cupper)).Client.GetAsync($"/Shipments/Shipment/{id}", Stop)).StatusCode);
    }

    [Fact]
    public async Task The_page_asks_for_a_reason_keeps_what_was_typed_and_then_shows_what_is_missing()
    {
        var shipment = await AddAsync(await SignedContract.StoreAsync(house));
        var buyer = await house.BrowserAsync(Role.Buyer);
        var document = shipment.GetProperty("documents").EnumerateArray().First(one => one.GetProperty("name").GetString() == "Fumigation certificate").GetProperty("id").GetGuid();
        var count = shipment.GetProperty("documents").GetArrayLength();

        var refused = await buyer.SendFormAsync($"/Shipments/Document/{document}", new Dictionary<string, string> { ["Input.State"] = "NotNeeded", ["Input.Reason"] = "" });
        var taken = await buyer.SendFormAsync($"/Shipments/Document/{document}", new Dictionary<string, string> { ["Input.State"] = "NotNeeded", ["Input.Reason"] = "Nothing was treated." });

        Assert.Contains("The reason why it is not needed", (await TestBrowser.PageAsync(refused)).QuerySelector("#Input_Reason_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        var text = (await buyer.ReadAsync($"/Shipments/Shipment/{shipment.GetProperty("id").GetGuid()}")).QuerySelector("main")!.TextContent;
        Assert.Contains($"{count - 1} of {count} documents are missing", text, StringComparison.Ordinal);
        Assert.Contains("Nothing was treated.", text, StringComparison.Ordinal);
        var list = (await buyer.ReadAsync("/Shipments")).QuerySelector("main")!.TextContent;
        Assert.Contains($"{count - 1} of {count}", list, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_houses_list_is_edited_and_the_next_listing_follows_it()
    {
        var shipment = await AddAsync(await SignedContract.StoreAsync(house));
        var id = shipment.GetProperty("id").GetGuid();
        var buyer = await house.BrowserAsync(Role.Buyer);

        var wrong = await buyer.SendFormAsync("/Shipments/DocumentRule", new Dictionary<string, string> { ["Input.Name"] = "Radiation test", ["Input.Destinations"] = "Germany" });
        var added = await buyer.SendFormAsync("/Shipments/DocumentRule", new Dictionary<string, string> { ["Input.Name"] = "Radiation test", ["Input.Destinations"] = "de at" });
        await buyer.SendFormAsync($"/Shipments/Shipment/{id}", new Dictionary<string, string>(), "ListDocuments");
        await buyer.SendFormAsync($"/Shipments/Shipment/{id}", new Dictionary<string, string> { ["name"] = "Letter of the mill" }, "AddDocument");

        Assert.Contains("no country code", (await TestBrowser.PageAsync(wrong)).QuerySelector("#Input_Destinations_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, added.StatusCode);
        var page = (await buyer.ReadAsync($"/Shipments/Shipment/{id}")).QuerySelector("main")!.TextContent;
        Assert.Contains("Radiation test", page, StringComparison.Ordinal);
        Assert.Contains("Letter of the mill", page, StringComparison.Ordinal);
    }

    private async Task<JsonElement> AddAsync(SignedContract contract) => await ReadAsync(await (await house.ScriptAsync(Role.Buyer)).PostAsJsonAsync(new Uri("/api/shipments", UriKind.Relative), new
    {
        portOfLoading = "COBUN",
        portOfDestination = "DEHAM",
        lots = new[] { new { contractLotId = contract.LotId.Value, bags = 275, netWeightKg = 18_975m } },
    }, Stop));

    private static async Task<HttpResponseMessage> SendFileAsync(HttpClient script, Guid id, Guid document, string name, byte[] bytes)
    {
        using var content = new ByteArrayContent(bytes);
        content.Headers.ContentType = new MediaTypeHeaderValue("application/octet-stream");
        using var form = new MultipartFormDataContent { { content, "file", name } };
        return await script.PostAsync(new Uri($"/api/shipments/{id}/documents/{document}/file", UriKind.Relative), form, Stop);
    }

    private static async Task<JsonElement> ReadAsync(HttpResponseMessage answer)
    {
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }
}
