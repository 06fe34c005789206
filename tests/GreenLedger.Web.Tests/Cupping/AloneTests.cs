using System.Net;
using GreenLedger.Data.Cupping;
using GreenLedger.Domain;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

/// <summary>One person with bowls and a phone, and what laying out a table with others shows beforehand.</summary>
public sealed class AloneTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task One_button_at_a_sample_starts_a_full_sheet_with_three_bowls()
    {
        var table = await Table.LayOutAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);

        var answer = await buyer.SendFormAsync($"/Samples/Sample/{table.SampleIds[0]}", new Dictionary<string, string> { ["Input.Samples"] = table.SampleIds[0] });

        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var session = await SessionAsync(house, answer);
        Assert.Equal((Blinding.Open, 3, 1), (session.Blinding, session.CupsPerSample, session.Samples.Count));
        var phone = await house.ScriptAsync(Role.Buyer);
        await phone.ActAsync(session.Id, "flights/1/pour");
        await WriteAsync(phone, session.Id, session.Samples[0].Code, "8");
        await buyer.PostAsync($"/Cupping/Close/{session.Id}");
        var result = (await buyer.ReadAsync($"/Cupping/Result/{session.Id}")).QuerySelector("main")!.TextContent;
        // 7 × 8.00 + 30, and the house's 1.00 between cuppers times 1.96: the interval that one cupper deserves.
        Assert.Contains("86.00 ± 1.96", result, StringComparison.Ordinal);
        Assert.Contains("the cupper knew the coffee", result, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_stands_on_a_table_where_one_cups_is_not_poured_alone()
    {
        var table = await Table.LayOutAsync(house);
        var cupper = await house.BrowserAsync(Role.Cupper);
        using var chosen = new FormUrlEncodedContent([new("__RequestVerificationToken", await TokenAsync(cupper)), new("Input.CupsPerSample", "3"), new("Input.Samples", table.SampleIds[0])]);

        var answer = await cupper.Client.PostAsync(new Uri("/Cupping/Alone", UriKind.Relative), chosen, Stop);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Contains("stands on a table where you cup", (await TestBrowser.PageAsync(answer)).QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Codes_under_the_bowls_are_asked_for_once_every_sheet_is_in()
    {
        var table = await Table.LayOutAsync(house);
        var buyer = await house.BrowserAsync(Role.Buyer);
        var phone = await house.ScriptAsync(Role.Buyer);
        using var chosen = new FormUrlEncodedContent(
        [
            new("__RequestVerificationToken", await TokenAsync(buyer)), new("Input.CupsPerSample", "3"), new("Input.Samples", table.SampleIds[0]), new("Input.Samples", table.SampleIds[1]),
        ]);
        var started = await buyer.Client.PostAsync(new Uri("/Cupping/Alone?handler=Blind", UriKind.Relative), chosen, Stop);
        var session = await SessionAsync(house, started);
        var under = $"/Cupping/Undersides/{session.Id}";
        var codes = session.Samples.Select(sample => sample.Code).ToList();

        var page = await buyer.ReadAsync(under);
        var other = await (await house.BrowserAsync(Role.LeadCupper)).Client.GetAsync(new Uri(under, UriKind.Relative), Stop);
        await WriteAsync(phone, session.Id, "P1", "8");
        var early = await TestBrowser.PageAsync(await SendAsync(buyer, under, codes[0], codes[1]));
        await WriteAsync(phone, session.Id, "P2", "7");
        var wrong = await TestBrowser.PageAsync(await SendAsync(buyer, under, codes[0], codes[0]));
        var turned = await SendAsync(buyer, under, codes[1], codes[0]);

        Assert.All(codes, code => Assert.Contains(code, page.QuerySelector("table")!.TextContent, StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.NotFound, other.StatusCode);
        Assert.Contains("still open: P2", early.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("every code of this table stands under one place", wrong.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, turned.StatusCode);
        var after = await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(one => one.Id == session.Id, Stop));
        var cupper = after.Panel.Single().PersonId;
        // Under P1 stood the second code: its sheet of eights is 86, that of sevens 79.
        Assert.Equal(Score.Of(86m), after.SheetOf(after.Poured(codes[1]), cupper)!.Total);
        Assert.Equal(Score.Of(79m), after.SheetOf(after.Poured(codes[0]), cupper)!.Total);
    }

    [Fact]
    public async Task A_cupper_closes_the_session_cupped_alone_and_no_other()
    {
        // At an open table of two coffees, as other tests leave them, the cupper would be told of no sample to cup.
        await using var quiet = new HouseFixture();
        var table = await Table.LayOutAsync(quiet);
        var cupper = await quiet.BrowserAsync(Role.Cupper);
        var phone = await quiet.ScriptAsync(Role.Cupper);
        using var chosen = new FormUrlEncodedContent([new("__RequestVerificationToken", await TokenAsync(cupper)), new("Input.CupsPerSample", "3"), new("Input.Samples", await SampleOnNoTableAsync(quiet))]);
        var session = await SessionAsync(quiet, await cupper.Client.PostAsync(new Uri("/Cupping/Alone", UriKind.Relative), chosen, Stop));
        await WriteAsync(phone, session.Id, session.Samples[0].Code, "8");
        Assert.Contains((await cupper.ReadAsync($"/Cupping/Table/{session.Id}")).QuerySelectorAll("a"), link => link.TextContent == "Close the session");
        Assert.DoesNotContain((await cupper.ReadAsync($"/Cupping/Table/{table.SessionId}")).QuerySelectorAll("a"), link => link.TextContent == "Close the session");

        var refused = await phone.PostAsync(new Uri($"/api/cupping/sessions/{table.SessionId}/close", UriKind.Relative), null, Stop);
        await cupper.PostAsync($"/Cupping/Close/{table.SessionId}");
        var closed = await cupper.PostAsync($"/Cupping/Close/{session.Id}");

        Assert.Equal(HttpStatusCode.Forbidden, refused.StatusCode);
        Assert.Equal($"/Cupping/Result/{session.Id}", closed.Headers.Location!.OriginalString);
        var left = await quiet.FromLedgerAsync(db => db.CuppingSessions.Where(one => one.ClosedAt == null).Select(one => one.Id).ToListAsync(Stop));
        Assert.Contains(table.SessionId, left);
        Assert.DoesNotContain(session.Id, left);
    }

    [Fact]
    public async Task More_samples_than_a_list_takes_are_said_and_found_by_a_word_and_what_is_ticked_stays()
    {
        await using var quiet = new HouseFixture();
        await quiet.OpenHouseAsync();
        await quiet.InLedgerAsync(db =>
        {
            for (var number = 0; number < 62; number++)
            {
                var lot = new Lot($"MANY-{number}", number == 61 ? "Zwergau" : "Many");
                // The last came first, so that the list of the newest leaves it out.
                db.AddRange(lot, new Sample(lot.Id, SampleKind.Offer, $"MNY{number:00}", new DateOnly(2026, 11, 20).AddDays(-number), Weight.FromGrams(300m)));
            }

            return db.SaveChangesAsync(Stop);
        });
        var buyer = await quiet.BrowserAsync(Role.Buyer);
        var page = await buyer.ReadAsync("/Cupping/Alone");
        var ticked = page.QuerySelector("input[name='Input.Samples'][checked]")!.GetAttribute("value");

        var found = await TestBrowser.PageAsync(await buyer.SendFormAsync("/Cupping/Alone", new Dictionary<string, string> { ["Find"] = "zwergau" }, "Find"));

        Assert.Contains("60 of 62 samples are listed", page.QuerySelector("form[method=post] [role=status]")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("Zwergau", page.QuerySelector(".pick-list")!.TextContent, StringComparison.Ordinal);
        var rows = found.QuerySelectorAll(".pick-list tbody tr").ToList();
        Assert.Equal(2, rows.Count);
        Assert.Equal(ticked, rows[0].QuerySelector("input[checked]")!.GetAttribute("value"));
        Assert.Contains("Zwergau", rows[1].TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_layout_is_shown_before_it_is_stored_and_says_what_dropping_costs()
    {
        var table = await Table.LayOutAsync(house);
        var lead = await house.BrowserAsync(Role.LeadCupper);
        var cupper = await house.FromLedgerAsync(db => Seats.PersonAsync(db, Role.Cupper));
        var choice = new Dictionary<string, string> { ["Input.Title"] = "Shown first", ["Input.Samples"] = table.SampleIds[0], ["Input.Cuppers"] = cupper.Id.ToString(), ["Input.Duplicates"] = "0" };

        var shown = await TestBrowser.PageAsync(await lead.SendFormAsync("/Cupping/New", choice, to: "/Cupping/New?handler=Propose"));

        var proposal = shown.QuerySelector("[data-proposal]")!.TextContent;
        Assert.Contains("1 code in 1 flight", proposal, StringComparison.Ordinal);
        Assert.Contains("No sample is poured twice", proposal, StringComparison.Ordinal);
        Assert.Contains("No house reference is on the table", proposal, StringComparison.Ordinal);
        Assert.False(await house.FromLedgerAsync(db => db.CuppingSessions.AnyAsync(one => one.Title == "Shown first", Stop)));
        var stored = await lead.SendFormAsync("/Cupping/New", choice);
        var session = await SessionAsync(house, stored);
        Assert.Equal(cupper.Id, session.Panel.Single().PersonId);
        // The habits of a new house: 150 mL and 0.055 g/mL, handbook quality.md section 1.1.
        Assert.Equal(new TablePlan(150, Weight.FromGrams(8.25m), "filtered, 93 °C when poured"), session.Plan);
    }

    [Fact]
    public async Task Habits_hold_for_the_next_session_and_other_times_need_a_reason()
    {
        await Table.LayOutAsync(house);
        var lead = await house.BrowserAsync(Role.LeadCupper);

        var saved = await lead.SendFormAsync("/Cupping/Habits", new Dictionary<string, string> { ["Input.CupMilliliters"] = "150", ["Input.MostInFlight"] = "7" });
        var silent = await TestBrowser.PageAsync(await lead.SendFormAsync("/Cupping/Habits", new Dictionary<string, string> { ["Times[hot]"] = "540" }, "Times"));
        var retimed = await lead.SendFormAsync("/Cupping/Habits", new Dictionary<string, string> { ["Times[hot]"] = "540", ["Reason"] = "Our bowls cool slowly" }, "Times");

        Assert.Equal([HttpStatusCode.Redirect, HttpStatusCode.Redirect], [saved.StatusCode, retimed.StatusCode]);
        Assert.Contains("The reason for the change", silent.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("540", silent.QuerySelector("#at-hot")!.GetAttribute("value"));
        Assert.Equal("7", (await lead.ReadAsync("/Cupping/New")).QuerySelector("#Input_MostInFlight")!.GetAttribute("value"));
    }

    private static async Task WriteAsync(HttpClient phone, Id<CuppingSession> session, string code, string mark)
    {
        await phone.ActAsync(session, $"sheets/{code}/changes", new { key = Guid.NewGuid(), version = 0, values = Seats.All(mark) });
        var handedIn = await phone.ActAsync(session, $"sheets/{code}/hand-in");
        Assert.True(handedIn.IsSuccessStatusCode, await handedIn.Content.ReadAsStringAsync(Stop));
    }

    private static Task<HttpResponseMessage> SendAsync(TestBrowser browser, string address, string first, string second) => Task.Run(
        async () => await browser.Client.PostAsync(new Uri(address, UriKind.Relative), new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["__RequestVerificationToken"] = await TokenAsync(browser),
            ["Codes[P1]"] = first,
            ["Codes[P2]"] = second,
        })), Stop);

    private static Task<string> SampleOnNoTableAsync(HouseFixture house) => house.FromLedgerAsync(async db =>
    {
        var lot = new Lot("ALONE-1", "Ladera Sola");
        var sample = new Sample(lot.Id, SampleKind.Offer, "ALN1", new DateOnly(2026, 11, 20), Weight.FromGrams(300m));
        db.AddRange(lot, sample);
        await db.SaveChangesAsync(Stop);
        return sample.Id.ToString();
    });

    private static async Task<string> TokenAsync(TestBrowser browser) =>
        (await browser.ReadAsync("/")).QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;

    private static async Task<CuppingSession> SessionAsync(HouseFixture house, HttpResponseMessage answer)
    {
        var id = Id<CuppingSession>.Parse(answer.Headers.Location!.OriginalString.Split('/')[^1], null);
        return await house.FromLedgerAsync(db => db.CuppingSessions.AsNoTracking().Whole().SingleAsync(session => session.Id == id, Stop));
    }
}
