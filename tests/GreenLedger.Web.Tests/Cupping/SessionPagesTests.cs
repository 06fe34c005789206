using System.Net;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests.Cupping;

public sealed class SessionPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_session_without_samples_is_refused_and_keeps_what_was_typed()
    {
        await Table.LayOutAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);

        var page = await TestBrowser.PageAsync(await leader.SendFormAsync(
            "/Cupping/New", new Dictionary<string, string> { ["Input.Title"] = "An empty table", ["Input.CupsPerSample"] = "4" }));

        Assert.Contains("Choose at least one sample", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("An empty table", page.QuerySelector("#Input_Title")!.GetAttribute("value"));
        Assert.Equal("4", page.QuerySelector("#Input_CupsPerSample")!.GetAttribute("value"));
        Assert.False(await house.FromLedgerAsync(db => db.CuppingSessions.AnyAsync(session => session.Title == "An empty table", Stop)));
    }

    [Fact]
    public async Task A_house_without_a_reference_is_told_so_and_its_newest_stock_sample_is_proposed()
    {
        // A house of its own: no other test lays a reference on its tables.
        await using var own = new HouseFixture();
        var table = await Table.LayOutAsync(own);
        var leader = await own.BrowserAsync(Role.LeadCupper);

        var before = await leader.ReadAsync("/Cupping/New");
        await own.FromLedgerAsync(async db =>
        {
            var lot = await db.Lots.OrderBy(one => one.Ref).FirstAsync(Stop);
            db.AddRange(
                new Sample(lot.Id, SampleKind.Stock, "STOCKOLD", new DateOnly(2026, 10, 1), Weight.FromGrams(900m)),
                new Sample(lot.Id, SampleKind.Stock, "STOCKNEW", new DateOnly(2026, 11, 1), Weight.FromGrams(900m)));
            return await db.SaveChangesAsync(Stop);
        });
        var after = await leader.ReadAsync("/Cupping/New");

        Assert.Contains("No session here has had a house reference yet, and no stock sample is here", before.QuerySelector("[data-first-reference]")!.TextContent, StringComparison.Ordinal);
        Assert.Contains(before.QuerySelectorAll("#Input_ReferenceId option"), one => one.TextContent.StartsWith(table.Labels[0], StringComparison.Ordinal));
        Assert.Contains("The newest sample of your own stock is proposed", after.QuerySelector("[data-first-reference]")!.TextContent, StringComparison.Ordinal);
        Assert.StartsWith("STOCKNEW", after.QuerySelector("#Input_ReferenceId option[selected]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(2, after.QuerySelectorAll("#Input_ReferenceId optgroup[label='Own stock'] option").Length);
    }

    [Theory]
    [InlineData("6", "cupped with 5, 4, 3 cups")]
    [InlineData("a few", "")]
    public async Task Cups_that_the_form_does_not_know_are_refused_and_the_choice_of_samples_is_kept(string cups, string sentence)
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var id = await house.FromLedgerAsync(db => db.Samples.Where(sample => sample.LabelCode == table.Labels[0]).Select(sample => sample.Id).SingleAsync(Stop));

        var page = await TestBrowser.PageAsync(await leader.SendFormAsync(
            "/Cupping/New", new Dictionary<string, string> { ["Input.Title"] = "Six cups", ["Input.CupsPerSample"] = cups, ["Input.Samples"] = id.ToString() }));

        Assert.Contains(sentence, page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(cups, page.QuerySelector("#Input_CupsPerSample")!.GetAttribute("value"));
        Assert.True(page.QuerySelector($"#sample-{table.Labels[0]}")!.HasAttribute("checked"));
    }

    [Fact]
    public async Task A_session_nobody_cupped_is_not_closed_and_the_page_says_why()
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);
        Assert.Contains("Nobody tasted", (await leader.ReadAsync($"/Cupping/Close/{table.SessionId}")).Body!.TextContent, StringComparison.Ordinal);

        var page = await TestBrowser.PageAsync(await leader.PostAsync($"/Cupping/Close/{table.SessionId}"));

        Assert.Contains("Nobody has handed in a sheet yet", page.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.False(await house.FromLedgerAsync(db => db.CuppingSessions.AnyAsync(session => session.Id == table.SessionId && session.ClosedAt != null, Stop)));
    }

    [Fact]
    public async Task A_changed_number_makes_a_new_revision_and_leaves_the_form_of_earlier_sessions_alone()
    {
        var leader = await house.BrowserAsync(Role.LeadCupper);
        var address = $"/Cupping/Revise/{CuppingForm.AffectiveId}";

        var refused = await TestBrowser.PageAsync(await leader.SendFormAsync(address, new Dictionary<string, string> { ["Input.HeavyPoints"] = "5" }));
        var answer = await leader.SendFormAsync(address, new Dictionary<string, string> { ["Input.HeavyPoints"] = "5", ["Input.Reason"] = "the printed standard of the house" });

        Assert.Contains("The reason for the change", refused.QuerySelector("[data-errors]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("5", refused.QuerySelector("#Input_HeavyPoints")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Redirect, answer.StatusCode);
        var forms = await house.FromLedgerAsync(db => db.CuppingForms.AsNoTracking().Where(form => form.Code == "affective").OrderBy(form => form.Revision).ToListAsync(Stop));
        Assert.Equal([4m, 5m], forms.Select(form => form.Rules.Deductions[1].PointsPerCup));
    }

    [Fact]
    public async Task The_result_says_for_whom_its_interval_holds_and_shows_both_errors()
    {
        var table = await Table.LayOutAsync(house);
        var leader = await house.BrowserAsync(Role.LeadCupper);
        await leader.SendFormAsync($"/Cupping/Sheet/{table.SessionId}/{table.Codes[0]}", Table.Marks("8.00"));
        await leader.PostAsync($"/Cupping/Close/{table.SessionId}");

        var page = await leader.ReadAsync($"/Cupping/Result/{table.SessionId}");

        // One cupper: the sheet, 7 × 8.00 + 30. House settings as delivered: 1.00 between cuppers, 0.50 of one; 1.96 × 1.00.
        var row = page.QuerySelector("[aria-label=Results] tbody tr")!.QuerySelectorAll("td").Select(cell => cell.TextContent.Trim()).ToList();
        Assert.Contains("86.00 ± 1.96", row);
        Assert.Contains("0.50", row);
        Assert.Contains("1.00", row);
        var text = page.QuerySelector("main")!.TextContent;
        Assert.Contains("The 95 % interval holds for any cupper", text, StringComparison.Ordinal);
        Assert.Contains("reproducibility between cuppers (1.00 points)", text, StringComparison.Ordinal);
        Assert.Contains("One cupper: the result is the sheet", text, StringComparison.Ordinal);

        // What the house expects from now on says nothing about what is closed.
        await house.InLedgerAsync(async db =>
        {
            (await db.Houses.SingleAsync(Stop)).Expect(Score.Of(1.5m), Score.Of(0.75m));
            await db.SaveChangesAsync(Stop);
        });
        var later = (await leader.ReadAsync($"/Cupping/Result/{table.SessionId}")).QuerySelector("main")!.TextContent;
        Assert.Contains("reproducibility between cuppers (1.00 points)", later, StringComparison.Ordinal);
        Assert.Contains("repeatability of one cupper (0.50 points)", later, StringComparison.Ordinal);
    }
}
