using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Offers;

public sealed class SupplierContactsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static int _count;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_contact_is_added_on_the_page_shown_with_the_supplier_and_changed()
    {
        var supplier = await StoreAsync();
        var buyer = await house.BrowserAsync(Role.Buyer);
        var typed = new Dictionary<string, string> { ["Input.Name"] = "Ana Duque", ["Input.Email"] = "ana", ["Input.Language"] = "es" };

        var refused = await buyer.SendFormAsync($"/Offers/NewContact/{supplier}", typed);
        var added = await buyer.SendFormAsync($"/Offers/NewContact/{supplier}", new Dictionary<string, string>(typed) { ["Input.Email"] = "ana@casa.example", ["Input.Receives"] = "Claims" });
        var id = await house.FromLedgerAsync(db => db.SupplierContacts.Where(contact => contact.SupplierId == supplier).Select(contact => contact.Id).SingleAsync(Stop));
        await buyer.SendFormAsync($"/Offers/EditContact/{id}", new Dictionary<string, string> { ["Input.Name"] = "Ana Duque Ríos" });

        Assert.Contains("not an e-mail address", (await TestBrowser.PageAsync(refused)).QuerySelector("#Input_Email_error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Ana Duque", (await TestBrowser.PageAsync(refused)).QuerySelector("#Input_Name")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Redirect, added.StatusCode);
        var page = (await buyer.ReadAsync($"/Offers/Supplier/{supplier}")).QuerySelector("main")!.TextContent;
        Assert.Contains("Ana Duque Ríos", page, StringComparison.Ordinal);
        Assert.Contains("Spanish", page, StringComparison.Ordinal);
        Assert.Equal("Ana Duque", (await buyer.ReadAsync($"/Offers/EditContact/{id}")).QuerySelector(".history del")!.TextContent.Trim());
    }

    [Fact]
    public async Task A_script_adds_reads_and_changes_contacts_and_one_address_stands_once()
    {
        var supplier = await StoreAsync();
        var address = new Uri($"/api/offers/suppliers/{supplier}/contacts", UriKind.Relative);
        var script = await house.ScriptAsync(Role.Buyer);
        var body = new { name = "Luís Prado", email = "luis@casa.example", language = "pt", receives = new[] { "feedback", "contractPapers" } };

        var added = await script.PostAsJsonAsync(address, body, Stop);
        var twice = await script.PostAsJsonAsync(address, body, Stop);
        var id = (await added.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid();
        var left = await script.PutAsJsonAsync(new Uri($"/api/offers/contacts/{id}", UriKind.Relative), new { body.name, body.email, language = "fr", isActive = false }, Stop);

        Assert.Equal((HttpStatusCode.Created, HttpStatusCode.UnprocessableEntity, HttpStatusCode.OK), (added.StatusCode, twice.StatusCode, left.StatusCode));
        var contact = (await (await house.ScriptAsync(Role.Viewer)).GetFromJsonAsync<JsonElement>(address, Stop)).EnumerateArray().Single();
        Assert.Equal(("fr", false, 0), (contact.GetProperty("language").GetString(), contact.GetProperty("isActive").GetBoolean(), contact.GetProperty("receives").GetArrayLength()));
        Assert.Equal(HttpStatusCode.Forbidden, (await (await house.ScriptAsync(Role.Cupper)).GetAsync(address, Stop)).StatusCode);
    }

    private async Task<Id<Supplier>> StoreAsync()
    {
        await house.OpenHouseAsync();
        var number = Interlocked.Increment(ref _count);
        return await house.FromLedgerAsync(async db =>
        {
            var supplier = new Supplier($"Casa {number}", SupplierKind.Exporter, "CO", "es");
            db.Add(supplier);
            await db.SaveChangesAsync(Stop);
            return supplier.Id;
        });
    }
}
