using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

public sealed class PastResultsTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private const string Headings = "Lote;Fragancia/Aroma;Sabor;Sabor residual;Acidez;Cuerpo;Equilibrio;Uniformidad;Taza limpia;Dulzor;Puntaje catador;Puntaje total;Humedad;Fecha\n";

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_API_previews_stores_once_and_lists_what_disagrees()
    {
        // Handbook quality.md section 1.1, worked total 1 (83.50); row 3 states half a point more; row 4 has no flavor.
        var file = Headings
            + "PAST-1;7,75;7,75;7,50;7,75;7,50;7,50;10;10;10;7,75;83,50;11,2;2025-03-01\n"
            + "PAST-2;7,75;7,75;7,50;7,75;7,50;7,50;10;10;10;7,75;84,00;;2025-03-01\n"
            + "PAST-3;7,75;;7,50;7,75;7,50;7,50;10;10;10;7,75;83,50;;2025-03-01\n";
        await house.OpenHouseAsync();
        await house.InLedgerAsync(async db =>
        {
            db.Add(new Lot("PAST-1", "Loma Alta"));
            await db.SaveChangesAsync(Stop);
        });

        var (sessions, results) = await PastAsync();
        var preview = await ImportAsync(file, commit: false);
        var previewed = await PastAsync();
        var stored = await ImportAsync(file, commit: true);
        var again = await ImportAsync(file, commit: true);

        Assert.Equal((sessions, results), previewed);
        Assert.Equal(2, preview.GetProperty("accepted").GetInt32());
        Assert.Contains("Flavor is missing", preview.GetProperty("setAside")[0].GetProperty("reason").GetString(), StringComparison.Ordinal);
        var disagreement = Assert.Single(stored.GetProperty("disagreements").EnumerateArray());
        Assert.Equal((3, 83.50m, 84.00m), (disagreement.GetProperty("row").GetInt32(), disagreement.GetProperty("computed").GetDecimal(), disagreement.GetProperty("stated").GetDecimal()));
        Assert.True(again.GetProperty("alreadyTaken").GetBoolean());
        Assert.False(again.GetProperty("committed").GetBoolean());
        Assert.Equal((sessions + 1, results + 2), await PastAsync());
        Assert.Equal(1, await house.FromLedgerAsync(db => db.Lots.CountAsync(lot => lot.Ref == "PAST-1", Stop)));
        Assert.Equal(112_000, (await house.FromLedgerAsync(db => db.GreenGrades.SingleAsync(Stop))).Moisture!.Value.TenThousandths);
    }

    [Fact]
    public async Task The_page_shows_what_was_understood_before_it_stores()
    {
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var file = Headings.Replace("Puntaje total", "Jurado A", StringComparison.Ordinal)
            + "PAGE-1;7,75;7,75;7,50;7,75;7,50;7,50;10;10;10;7,75;83,50;;\n";

        var parked = await leader.SendFormAsync("/Cupping/Import", new Dictionary<string, string>(), "Read", files: [("Input.File", "resultados.csv", Encoding.UTF8.GetBytes(file))]);
        Assert.Equal(HttpStatusCode.Redirect, parked.StatusCode);
        var address = parked.Headers.Location!.ToString();
        var preview = await leader.ReadAsync(address);
        var stored = await leader.SendFormAsync(address, new Dictionary<string, string>(), "Store");

        Assert.Contains("PAGE-1", preview.Body!.TextContent, StringComparison.Ordinal);
        Assert.Contains("new lot", preview.Body.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, stored.StatusCode);
        Assert.Contains("/Cupping/Result/", stored.Headers.Location!.ToString(), StringComparison.Ordinal);
        Assert.Equal(1, await house.FromLedgerAsync(db => db.Lots.CountAsync(lot => lot.Ref == "PAGE-1", Stop)));
    }

    [Fact]
    public async Task A_name_is_found_however_it_is_written_and_one_of_two_lots_is_set_aside()
    {
        const string points = ";7,75;7,75;7,50;7,75;7,50;7,50;10;10;10;7,75;83,50;;2025-04-01\n";
        await house.OpenHouseAsync();
        await house.InLedgerAsync(async db =>
        {
            db.AddRange(new Lot("SEEN-1", "Bela Vista"), new Lot("SEEN-2", "Serra Verde"), new Lot("SEEN-3", "Serra Verde"));
            await db.SaveChangesAsync(Stop);
        });

        var preview = await ImportAsync(Headings + "seen 1" + points + "serra verde" + points + "SEEN/2" + points, commit: false);

        Assert.Equal(["seen 1", "SEEN/2"], preview.GetProperty("rows").EnumerateArray().Where(row => !row.GetProperty("isNewLot").GetBoolean()).Select(row => row.GetProperty("ref").GetString()));
        var aside = Assert.Single(preview.GetProperty("setAside").EnumerateArray());
        Assert.Equal(
            (3, "'serra verde' may be SEEN-2 (Serra Verde), SEEN-3 (Serra Verde): write the label code of the sample that was cupped instead."),
            (aside.GetProperty("row").GetInt32(), aside.GetProperty("reason").GetString()));
    }

    [Fact]
    public async Task A_file_that_is_no_table_of_results_is_refused_in_a_sentence()
    {
        var leader = await house.BrowserAsync(Role.LeadCupper);

        var answer = await leader.SendFormAsync("/Cupping/Import", new Dictionary<string, string>(), "Read", files: [("Input.File", "prices.csv", Encoding.UTF8.GetBytes("Reference;Price\nA-1;3.20\n"))]);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("names the attributes", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_list_that_somebody_else_sent_is_not_opened_as_results()
    {
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var list = new StoredFile("prices.csv", "text/csv", Encoding.UTF8.GetBytes("Ref;USD/kg\nP-1;9.85\n"), null, DateTimeOffset.UtcNow);
        await house.InLedgerAsync(async db =>
        {
            db.Add(list);
            await db.SaveChangesAsync(Stop);
        });

        var opened = await leader.Client.GetAsync(new Uri($"/Cupping/Preview/{list.Id}", UriKind.Relative), Stop);
        var posted = await leader.PostAsync($"/Cupping/Preview/{list.Id}?handler=Again");

        Assert.Equal(HttpStatusCode.NotFound, opened.StatusCode);
        Assert.DoesNotContain("9.85", await posted.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cuppers_do_not_take_results_in()
    {
        var cupper = await house.ScriptAsync(Role.Cupper);

        var answer = await SendAsync(cupper, Headings, commit: true);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    /// <summary>How many past sessions and results on the 100-point form there are; the tests of this class share one house.</summary>
    private Task<(int Sessions, int Results)> PastAsync() => house.FromLedgerAsync(async db => (
        await db.CuppingSessions.CountAsync(session => session.IsPast, Stop),
        await db.SampleResults.CountAsync(result => result.FormId == CuppingForm.HundredPointId, Stop)));

    private async Task<JsonElement> ImportAsync(string text, bool commit)
    {
        var answer = await SendAsync(await house.ScriptAsync(Role.Buyer), text, commit);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(Stop));
        return await answer.Content.ReadFromJsonAsync<JsonElement>(Stop);
    }

    private static Task<HttpResponseMessage> SendAsync(HttpClient client, string text, bool commit)
    {
        var form = new MultipartFormDataContent { { new ByteArrayContent(Encoding.UTF8.GetBytes(text)), "file", "resultados.csv" } };
        if (commit)
        {
            form.Add(new StringContent("true"), "commit");
        }

        return client.PostAsync(new Uri("/api/cupping/import", UriKind.Relative), form, Stop);
    }
}
