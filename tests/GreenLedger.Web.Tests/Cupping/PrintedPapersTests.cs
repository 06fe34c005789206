using System.Net;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using UglyToad.PdfPig;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>What is printed for an open table: everybody at it may hold the plan, labels and sheets; the key is for who pours, and is recorded.</summary>
public sealed class PrintedPapersTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("Plan", 2)]
    [InlineData("Sheets", 2)]
    [InlineData("Labels", 10)]
    public async Task A_cupper_prints_codes_and_no_coffee(string paper, int codes)
    {
        var table = await Table.LayOutAsync(house);
        await house.SeatAsync(table, Role.Cupper, Role.LeadCupper);
        var cupper = await house.BrowserAsync(Role.Cupper);
        var link = (await cupper.ReadAsync($"/Cupping/Table/{table.SessionId}")).QuerySelectorAll("a").Single(one => one.TextContent == "Print").GetAttribute("href")!;
        Assert.NotNull((await cupper.ReadAsync(link)).QuerySelector($"[href*='handler={paper}'], [name=handler][value={paper}]"));

        var answer = await cupper.Client.GetAsync(new Uri($"{link}?handler={paper}", UriKind.Relative), Stop);

        var text = await WordsAsync(answer);
        Assert.All(table.Codes, code => Assert.True(text.Split(' ').Count(word => word == code) >= codes / 2, text));
        Assert.All(table.Secrets, secret => Assert.DoesNotContain(secret, text, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task The_printed_key_is_recorded_and_is_there_for_who_laid_out_alone()
    {
        var table = await Table.LayOutAsync(house);
        var (cupper, leader) = (await house.BrowserAsync(Role.Cupper), await house.BrowserAsync(Role.LeadCupper));

        var refused = await cupper.PostAsync($"/Cupping/Key/{table.SessionId}?handler=Print");
        var answer = await leader.SendFormAsync($"/Cupping/Key/{table.SessionId}", new Dictionary<string, string>(), "Print");

        Assert.Equal(HttpStatusCode.NotFound, refused.StatusCode);
        var text = await WordsAsync(answer);
        Assert.All(table.Codes.Concat(table.Labels), word => Assert.Contains(word, text, StringComparison.Ordinal));
        Assert.Contains("for A LeadCupper alone", text, StringComparison.Ordinal);
        var opening = Assert.Single(await house.FromLedgerAsync(db => db.CuppingSessions.Where(session => session.Id == table.SessionId).SelectMany(session => session.KeyOpenings).ToListAsync(Stop)));
        Assert.Equal("A LeadCupper", await house.FromLedgerAsync(db => db.People.Where(person => person.Id == opening.By).Select(person => person.Name).SingleAsync(Stop)));
    }

    [Fact]
    public async Task A_place_that_the_sheet_of_labels_does_not_have_is_told_and_a_closed_table_has_no_papers()
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);

        var page = await leader.ReadAsync($"/Cupping/Print/{table.SessionId}?handler=Labels&sheet=a4-3x8&from=25");
        await leader.SendFormAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}", Table.Marks("8.00"));
        await leader.PostAsync($"/Cupping/Close/{table.SessionId}");
        var closed = await leader.Client.GetAsync(new Uri($"/Cupping/Print/{table.SessionId}?handler=Plan", UriKind.Relative), Stop);

        Assert.Contains("a place on it from 1 to 24", page.QuerySelector("[role=alert]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, closed.StatusCode);
    }

    private static async Task<string> WordsAsync(HttpResponseMessage answer)
    {
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal("application/pdf", answer.Content.Headers.ContentType!.MediaType);
        using var pdf = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync(Stop));
        return string.Join(" ", pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
    }
}
