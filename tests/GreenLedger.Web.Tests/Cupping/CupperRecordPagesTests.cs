using System.Net;
using GreenLedger.Domain.People;

namespace GreenLedger.Web.Tests.Cupping;

public sealed class CupperRecordPagesTests(HouseFixture house) : IClassFixture<HouseFixture>
{
    [Fact]
    public async Task A_cupper_reads_the_own_record_and_is_told_what_is_too_little_to_judge()
    {
        var blind = await ClosedTable.CloseAsync(house);
        var peeked = await ClosedTable.CloseAsync(house, peeks: true);
        var cupper = await house.BrowserAsync(Role.Cupper);

        var page = await cupper.ReadAsync("/Cupping/MyRecord");

        // +1.75, +1.75 and 0 against the other over three cups; 1.75 ÷ √2 from the one repeat.
        var sessions = page.QuerySelector("[aria-label='Sessions of this record'] tbody")!;
        var row = sessions.QuerySelector($"a[href$='{blind.SessionId}']")!.Closest("tr")!.TextContent;
        Assert.Contains("+1.17", row, StringComparison.Ordinal);
        Assert.Contains("1.24", row, StringComparison.Ordinal);
        Assert.Null(sessions.QuerySelector($"a[href$='{peeked.SessionId}']"));
        Assert.Contains("Too little to judge: +1.17 points against the others over", page.QuerySelector(".record-says")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_record_of_another_is_for_the_lead_cupper_alone()
    {
        var table = await ClosedTable.CloseAsync(house);

        foreach (var role in new[] { Role.Viewer, Role.Cupper, Role.Buyer, Role.Administrator })
        {
            var reader = await house.BrowserAsync(role);
            Assert.Equal(HttpStatusCode.Forbidden, (await reader.Client.GetAsync(new Uri($"/Cupping/Cupper/{table.Cupper}", UriKind.Relative), TestContext.Current.CancellationToken)).StatusCode);
        }

        var leader = await house.BrowserAsync(Role.LeadCupper);
        var list = await leader.ReadAsync("/Cupping/Cuppers");
        var link = list.QuerySelector($"a[href$='/Cupping/Cupper/{table.Cupper}']");
        Assert.NotNull(link);
        Assert.Contains("Bias against the panel", (await leader.ReadAsync(link.GetAttribute("href")!)).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_has_not_cupped_yet_is_told_when_the_record_begins()
    {
        var buyer = await house.BrowserAsync(Role.Buyer);

        Assert.Contains("No closed session has a blind sheet of yours yet", (await buyer.ReadAsync("/Cupping/MyRecord")).QuerySelector("main")!.TextContent, StringComparison.Ordinal);
    }
}
