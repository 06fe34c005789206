using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Papers;

public sealed class NoteTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_note_keeps_who_wrote_it_and_a_script_reads_it()
    {
        var (lot, _, _) = await PapersHouse.AddAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);

        var answer = await buyer.SendFormAsync(
            $"/Papers/WriteNote/Lot/{lot.Id}", new Dictionary<string, string> { ["Input.Text"] = "Ask for <b>two</b> bags more." });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var script = await house.ScriptAsync(Role.Viewer);
        using var notes = JsonDocument.Parse(await script.GetStringAsync($"/api/papers/notes?about=lot&id={lot.Id}", Cancel));
        var note = Assert.Single(notes.RootElement.EnumerateArray());
        Assert.Equal("Ask for <b>two</b> bags more.", note.GetProperty("text").GetString());
        Assert.Equal("A Buyer", note.GetProperty("by").GetString());
    }

    [Fact]
    public async Task The_history_of_a_note_tells_no_more_than_its_record_may()
    {
        var (lot, _, _) = await PapersHouse.AddAsync(house);
        await (await house.BrowserAsync(Role.Buyer)).SendFormAsync($"/Papers/WriteNote/Lot/{lot.Id}", new Dictionary<string, string> { ["Input.Text"] = "They would go to 9.10 USD." });
        var note = await house.FromLedgerAsync(db => db.Notes.SingleAsync(one => one.AboutId == lot.Id.Value, Cancel));
        var address = $"/api/papers/history?kind=Note&id={note.Id}";

        var viewer = await (await house.ScriptAsync(Role.Viewer)).GetStringAsync(address, Cancel);
        var cupper = await (await house.ScriptAsync(Role.Cupper)).GetStringAsync(address, Cancel);

        Assert.Contains("9.10", viewer, StringComparison.Ordinal);
        Assert.Equal("[]", cupper);
    }

    [Fact]
    public async Task An_empty_note_is_refused_in_a_sentence()
    {
        var (lot, _, _) = await PapersHouse.AddAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);

        var answer = await buyer.SendFormAsync(
            $"/Papers/WriteNote/Lot/{lot.Id}", new Dictionary<string, string> { ["Input.Text"] = "   " });

        var page = await TestBrowser.PageAsync(answer);
        Assert.Contains("The note is missing", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_removal_asks_with_the_notes_words_and_can_be_taken_back()
    {
        var (lot, _, _) = await PapersHouse.AddAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        await buyer.SendFormAsync($"/Papers/WriteNote/Lot/{lot.Id}", new Dictionary<string, string> { ["Input.Text"] = "Screen looks uneven." });
        var note = await house.FromLedgerAsync(db => db.Notes.SingleAsync(one => one.AboutId == lot.Id.Value, Cancel));

        var asks = await buyer.ReadAsync($"/Papers/RemoveNote/{note.Id}");
        await buyer.PostAsync($"/Papers/RemoveNote/{note.Id}");
        var removed = await house.FromLedgerAsync(db => db.Notes.SingleAsync(one => one.Id == note.Id, Cancel));
        await buyer.PostAsync($"/Papers/RemoveNote/{note.Id}?handler=PutBack");
        var back = await house.FromLedgerAsync(db => db.Notes.SingleAsync(one => one.Id == note.Id, Cancel));

        Assert.Contains("Screen looks uneven.", asks.Body!.TextContent, StringComparison.Ordinal);
        Assert.True(removed.IsRemoved);
        Assert.False(back.IsRemoved);
    }

    [Fact]
    public async Task A_cupper_learns_no_note_of_a_lot_by_asking_the_history_for_another_kind()
    {
        var (cupper, buyer) = (await house.ScriptAsync(Role.Cupper), await house.ScriptAsync(Role.Buyer));
        var lot = await house.FromLedgerAsync(async db =>
        {
            var lot = new Domain.Offers.Lot($"H-{Guid.NewGuid():N}", "Hidden lot");
            var by = await db.People.Select(person => person.Id).FirstAsync(Cancel);
            db.AddRange(lot, new Domain.Papers.Note(Domain.Papers.PapersOf.Lot, lot.Id.Value, "Offered at 9.85 USD/kg.", by, DateTimeOffset.UtcNow));
            await db.SaveChangesAsync(Cancel);
            return lot.Id;
        });

        var bare = await cupper.GetAsync("/api/papers/history?kind=Note&id=%20", Cancel);
        var other = await cupper.GetStringAsync($"/api/papers/history?kind=Sample&id={lot}", Cancel);
        var own = await buyer.GetStringAsync($"/api/papers/history?kind=Lot&id={lot}", Cancel);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, bare.StatusCode);
        Assert.DoesNotContain("9.85", other, StringComparison.Ordinal);
        Assert.Contains("9.85", own, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("about=nothing&id=0197c000-0000-7000-8000-000000000000", HttpStatusCode.UnprocessableEntity, "about")]
    [InlineData("about=lot&id=not-an-id", HttpStatusCode.BadRequest, "id")]
    [InlineData("about=lot&id=0197c000-0000-7000-8000-000000000000", HttpStatusCode.NotFound, "lot")]
    public async Task A_question_that_cannot_be_answered_says_why(string query, HttpStatusCode status, string word)
    {
        var script = await house.ScriptAsync(Role.Viewer);

        var answer = await script.GetAsync("/api/papers/notes?" + query, Cancel);

        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
        var said = await answer.Content.ReadFromJsonAsync<JsonElement>(Cancel);
        if (status == HttpStatusCode.NotFound)
        {
            Assert.Contains(word, said.GetProperty("detail").GetString(), StringComparison.Ordinal);
        }
        else
        {
            Assert.True(said.GetProperty("errors").TryGetProperty(word, out _));
        }
    }
}
