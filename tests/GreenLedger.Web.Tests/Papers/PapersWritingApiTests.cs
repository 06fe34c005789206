using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Papers;

public sealed class PapersWritingApiTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_script_attaches_reads_removes_and_puts_back_a_file()
    {
        var (_, offer, _) = await PapersHouse.AddAsync(house);
        using var script = await house.ScriptAsync(Role.Buyer);

        var attached = await AttachAsync(script, "offer", offer.Id.Value, "Prueba.pdf", PapersHouse.Pdf);
        var id = await IdOfAsync(attached);
        var file = new Uri($"/api/papers/attachments/{id}/file", UriKind.Relative);
        var bytes = await script.GetByteArrayAsync(file, Stop);
        var removed = await script.DeleteAsync(Paper("attachments", id), Stop);
        var gone = await script.GetAsync(file, Stop);
        var back = await script.PostAsync(Paper("attachments", id, "/put-back"), null, Stop);

        Assert.Equal(HttpStatusCode.Created, attached.StatusCode);
        Assert.Equal(PapersHouse.Pdf, bytes);
        Assert.Equal((HttpStatusCode.NoContent, HttpStatusCode.NotFound, HttpStatusCode.NoContent), (removed.StatusCode, gone.StatusCode, back.StatusCode));
        Assert.Equal(PapersHouse.Pdf, await script.GetByteArrayAsync(file, Stop));
    }

    [Theory]
    [InlineData("contract.exe", "MZ", "Files of this kind are not taken.")]
    [InlineData("programme.pdf", "MZ, and then more", "its content is something else")]
    [InlineData("empty.txt", "", "This file is empty")]
    public async Task What_the_page_does_not_take_is_refused_with_its_sentence_and_not_stored(string name, string content, string sentence)
    {
        var (_, offer, _) = await PapersHouse.AddAsync(house);
        using var script = await house.ScriptAsync(Role.Buyer);

        var refused = await AttachAsync(script, "offer", offer.Id.Value, name, Encoding.ASCII.GetBytes(content));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains(sentence, await refused.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.False(await house.FromLedgerAsync(db => db.Attachments.AnyAsync(one => one.AboutId == offer.Id.Value, Stop)));
    }

    [Fact]
    public async Task A_script_writes_removes_and_puts_back_a_note()
    {
        var (lot, _, _) = await PapersHouse.AddAsync(house);
        using var script = await house.ScriptAsync(Role.Buyer);

        var empty = await script.PostAsJsonAsync(Paper("notes"), new { about = "lot", id = lot.Id.Value, text = " " }, Stop);
        var written = await script.PostAsJsonAsync(Paper("notes"), new { about = "lot", id = lot.Id.Value, text = "Two bags more." }, Stop);
        var note = await IdOfAsync(written);
        await script.DeleteAsync(Paper("notes", note), Stop);
        var without = await NotesAsync(script, lot.Id.Value);
        await script.PostAsync(Paper("notes", note, "/put-back"), null, Stop);

        Assert.Equal((HttpStatusCode.UnprocessableEntity, HttpStatusCode.Created), (empty.StatusCode, written.StatusCode));
        Assert.Empty(without);
        Assert.Equal("Two bags more.", Assert.Single(await NotesAsync(script, lot.Id.Value)).GetProperty("text").GetString());
    }

    [Fact]
    public async Task Who_may_not_write_where_the_record_stands_puts_nothing_on_it_and_takes_nothing_off()
    {
        var (lot, _, sample) = await PapersHouse.AddAsync(house);
        using var buyer = await house.ScriptAsync(Role.Buyer);
        using var leader = await house.ScriptAsync(Role.LeadCupper);
        var note = await IdOfAsync(await buyer.PostAsJsonAsync(Paper("notes"), new { about = "lot", id = lot.Id.Value, text = "They would go to 9.10 USD." }, Stop));

        var onLot = await leader.PostAsJsonAsync(Paper("notes"), new { about = "lot", id = lot.Id.Value, text = "From the table." }, Stop);
        var offLot = await leader.DeleteAsync(Paper("notes", note), Stop);
        var onSample = await leader.PostAsJsonAsync(Paper("notes"), new { about = "sample", id = sample.Id.Value, text = "From the table." }, Stop);
        var fileOnLot = await AttachAsync(leader, "lot", lot.Id.Value, "Prueba.pdf", PapersHouse.Pdf);

        Assert.All([onLot, offLot, fileOnLot], answer => Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode));
        Assert.Equal(HttpStatusCode.Created, onSample.StatusCode);
        Assert.Single(await NotesAsync(buyer, lot.Id.Value));
    }

    private static Uri Paper(string kind, Guid? id = null, string act = "") => new($"/api/papers/{kind}{(id is { } one ? $"/{one}" : "")}{act}", UriKind.Relative);

    private static async Task<Guid> IdOfAsync(HttpResponseMessage answer) => (await answer.Content.ReadFromJsonAsync<JsonElement>(Stop)).GetProperty("id").GetGuid();

    private static async Task<List<JsonElement>> NotesAsync(HttpClient script, Guid lot) =>
        [.. (await script.GetFromJsonAsync<JsonElement>(new Uri($"/api/papers/notes?about=lot&id={lot}", UriKind.Relative), Stop)).EnumerateArray()];

    private static async Task<HttpResponseMessage> AttachAsync(HttpClient script, string about, Guid id, string name, byte[] bytes)
    {
        using var form = new MultipartFormDataContent { { new ByteArrayContent(bytes), "file", name } };
        return await script.PostAsync(new Uri($"/api/papers/attachments?about={about}&id={id}", UriKind.Relative), form, Stop);
    }
}
