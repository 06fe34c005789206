using System.IO.Compression;
using System.Net;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>What an open session seals appears nowhere that a cupper can look: lists, search, history, notes, exports, API.</summary>
public sealed class BlindnessTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_list_page_export_or_answer_tells_a_cupper_what_is_in_the_cups()
    {
        var table = await Table.LayOutAsync(house);
        var (sample, reference, grade) = await PapersAsync(table);
        var browser = await house.BrowserAsync(Role.Cupper);
        var script = await house.ScriptAsync(Role.Cupper);
        string[] pages =
        [
            "/Samples", $"/Samples?q={reference}", "/Samples?handler=Workbook", "/Grading", $"/Grading?q={reference}", "/Grading?handler=Workbook",
            $"/Samples/Sample/{sample}", $"/Search?q={reference}", "/Search?q=Escondida", "/Cupping?handler=Workbook", $"/Grading/Grade/{grade}", $"/Grading/Correct/{grade}", $"/Samples/Correct/{sample}",
        ];
        string[] answers =
        [
            $"/api/search?q={reference}", $"/api/papers/history?kind=CuppingSession&id={table.SessionId}", $"/api/papers/history?kind=Sample&id={sample}",
            $"/api/papers/notes?about=sample&id={sample}", $"/api/papers/attachments?about=sample&id={sample}", $"/api/cupping/lots/{reference}/results",
        ];

        foreach (var (client, address) in pages.Select(one => (browser.Client, one)).Concat(answers.Select(one => (script, one))))
        {
            var text = await TextAsync(await client.GetAsync(new Uri(address, UriKind.Relative), Stop));
            Assert.All(table.Coffees.Append("a note on the hidden coffee"), secret => Assert.False(
                text.Contains(secret, StringComparison.OrdinalIgnoreCase) && !address.Contains(secret, StringComparison.OrdinalIgnoreCase), $"{address} says {secret}"));
        }
    }

    [Fact]
    public async Task The_workbook_of_an_open_sessions_sheets_is_not_there()
    {
        var table = await Table.LayOutAsync(house);
        var browser = await house.BrowserAsync(Role.LeadCupper);

        var answer = await browser.Client.GetAsync(new Uri($"/Cupping/Result/{table.SessionId}?handler=Workbook", UriKind.Relative), Stop);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }

    [Theory]
    [InlineData(Role.Viewer)]
    [InlineData(Role.Buyer)]
    [InlineData(Role.Administrator)]
    public async Task The_history_of_an_open_session_says_to_nobody_which_code_a_sample_has(Role role)
    {
        var table = await Table.LayOutAsync(house);
        var script = await house.ScriptAsync(role);

        var history = await script.GetAsync(new Uri($"/api/papers/history?kind=CuppingSession&id={table.SessionId}", UriKind.Relative), Stop);
        var text = await history.Content.ReadAsStringAsync(Stop);

        Assert.All(table.Codes.Concat(table.Secrets), secret => Assert.DoesNotContain(secret, text, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task When_the_session_is_closed_the_cupper_finds_the_coffee_again()
    {
        var table = await Table.LayOutAsync(house);
        var (sample, reference, _) = await PapersAsync(table);
        var browser = await house.BrowserAsync(Role.Cupper);
        Assert.DoesNotContain(table.Labels[0], (await browser.ReadAsync($"/Samples?q={table.Labels[0]}")).QuerySelector("main")!.QuerySelector("table")?.TextContent ?? "", StringComparison.Ordinal);

        await house.InLedgerAsync(async db =>
        {
            var session = await db.CuppingSessions.Whole().SingleAsync(session => session.Id == table.SessionId, Stop);
            var cupper = await db.People.FirstAsync(person => person.Roles == Role.Cupper, Stop);
            session.Submit(table.Codes[0], cupper, new([.. Enumerable.Repeat(Mark.Of(8m), 7)], [5, 5, 5], [0, 0]), DateTimeOffset.UtcNow);
            session.Close(session.LaidOutBy!.Value, DateTimeOffset.UtcNow, new(1, 0.5));
            await db.SaveChangesAsync(Stop);
        });

        Assert.Contains(reference, (await browser.ReadAsync($"/Samples?q={reference}")).QuerySelector("table")!.TextContent, StringComparison.Ordinal);
        var page = (await browser.ReadAsync($"/Samples/Sample/{sample}")).Body!.TextContent;
        Assert.Contains(reference, page, StringComparison.Ordinal);
        Assert.Contains("a note on the hidden coffee", page, StringComparison.Ordinal);
    }

    /// <summary>A grade, a note and their history on the first sample of the table.</summary>
    private async Task<(Id<Sample> Sample, string Reference, Id<GreenGrade> Grade)> PapersAsync(Table table) => await house.FromLedgerAsync(async db =>
    {
        var sample = await db.Samples.SingleAsync(one => one.LabelCode == table.Labels[0], Stop);
        var lot = await db.Lots.SingleAsync(one => one.Id == sample.LotId, Stop);
        var buyer = await db.People.FirstAsync(person => person.Roles == Role.Buyer, Stop);
        var grade = new GreenGrade(sample.Id, lot.Id, new DateOnly(2026, 11, 22), buyer.Id, Weight.FromGrams(350m), "a note on the hidden coffee");
        db.Add(grade);
        db.Add(new Note(PapersOf.Sample, sample.Id.Value, "a note on the hidden coffee", buyer.Id, DateTimeOffset.UtcNow));
        await db.SaveChangesAsync(Stop);
        return (sample.Id, lot.Ref, grade.Id);
    });

    /// <summary>The words of a page or an answer, or of every part of a workbook.</summary>
    private static async Task<string> TextAsync(HttpResponseMessage answer)
    {
        if (answer.Content.Headers.ContentType?.MediaType?.Contains("spreadsheet", StringComparison.Ordinal) != true)
        {
            return await answer.Content.ReadAsStringAsync(Stop);
        }

        await using var archive = new ZipArchive(await answer.Content.ReadAsStreamAsync(Stop));
        var parts = new List<string>();
        foreach (var entry in archive.Entries)
        {
            using var reader = new StreamReader(await entry.OpenAsync(Stop));
            parts.Add(await reader.ReadToEndAsync(Stop));
        }

        return string.Join('\n', parts);
    }
}
