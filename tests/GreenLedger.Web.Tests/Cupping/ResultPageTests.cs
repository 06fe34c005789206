using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Cupping;

public sealed class ResultPageTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    [Fact]
    public async Task The_result_shows_what_hidden_duplicates_the_reference_and_the_words_said()
    {
        var table = await ClosedTable.CloseAsync(house);
        var cupper = await house.BrowserAsync(Role.Cupper);

        var page = await cupper.ReadAsync($"/Cupping/Result/{table.SessionId}");

        var text = page.QuerySelector("main")!.TextContent;
        var rows = page.QuerySelectorAll("[aria-label='Hidden duplicates'] tbody tr").Select(row => row.TextContent).ToList();
        Assert.Equal(2, rows.Count);
        // 7 × 8.00 + 30 and 7 × 8.25 + 30, 1.75 apart; both cuppers differ by as much, so that s = 1.75 ÷ √2.
        Assert.Contains(rows, row => row.Contains("86.00 · 87.75", StringComparison.Ordinal) && row.Contains("1.75", StringComparison.Ordinal));
        Assert.Contains("repeat themselves within 1.24 points", text, StringComparison.Ordinal);
        Assert.Contains("is the house reference", text, StringComparison.Ordinal);
        Assert.Contains("jasmine (2)", text, StringComparison.Ordinal);
        Assert.Contains("Blind: nobody on the panel could know", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Which_samples_the_panel_tells_apart_stands_in_words_in_a_drawing_and_in_a_table()
    {
        var table = await ClosedTable.CloseAsync(house);
        var cupper = await house.BrowserAsync(Role.Cupper);

        var page = await cupper.ReadAsync($"/Cupping/Result/{table.SessionId}");

        // Worked by hand: two cuppers and two samples leave one degree of freedom, so that the house's repeatability of 0.50
        // stands in; for one pair Tukey's test is the normal one: 3.50 ÷ √(0.50² × (1/2 + 1/2)) = 7.
        var pair = page.QuerySelector("[aria-label='Differences between samples'] tbody tr")!.QuerySelectorAll("td").Select(cell => cell.TextContent.Trim()).ToList();
        Assert.Equal("3.50", pair[1]);
        Assert.Equal("< 0.001", pair[3]);
        Assert.Equal("yes", pair[4]);
        Assert.Contains("tells every sample from every other", page.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(2, page.QuerySelectorAll(".alike-dot").Length);
    }

    [Fact]
    public async Task A_sheet_as_it_was_before_it_was_opened_again_is_shown_to_whoever_leads()
    {
        var table = await ClosedTable.CloseAsync(house, reopens: true);

        var page = await (await house.BrowserAsync(Role.LeadCupper)).ReadAsync($"/Cupping/Result/{table.SessionId}");
        var toCupper = await (await house.BrowserAsync(Role.Cupper)).ReadAsync($"/Cupping/Result/{table.SessionId}");

        // Worked by hand: 7 × 7.50 + 30 before, 7 × 7.75 + 30 after.
        var kept = page.QuerySelectorAll("details.sheet-details").Single(one => one.QuerySelector("summary")!.TextContent.Contains("82.50 points, then 84.25", StringComparison.Ordinal)).TextContent;
        Assert.Contains("A LeadCupper: Took the wrong cup", kept, StringComparison.Ordinal);
        Assert.Contains("jasmine", kept, StringComparison.Ordinal);
        Assert.Contains("5 good cups of 5", kept, StringComparison.Ordinal);
        Assert.DoesNotContain("Before they were opened again", toCupper.QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_opened_the_key_and_scored_is_marked_not_blind()
    {
        var table = await ClosedTable.CloseAsync(house, peeks: true);
        var cupper = await house.BrowserAsync(Role.Cupper);

        var page = await cupper.ReadAsync($"/Cupping/Result/{table.SessionId}");

        Assert.Contains("Marked not blind", page.QuerySelector(".note-caution")!.TextContent, StringComparison.Ordinal);
        Assert.Contains(page.QuerySelectorAll("[aria-label='Hidden duplicates'] tbody td"), cell => cell.TextContent.Contains("· not blind", StringComparison.Ordinal));
    }
}
