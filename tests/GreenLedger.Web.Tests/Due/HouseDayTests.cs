using System.Net.Http.Json;
using System.Text.Json;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.Shipments;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace GreenLedger.Web.Tests.Due;

public sealed class HouseDayTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>New Zealand's clocks are 13 hours ahead from the last Sunday in September (IANA time zone data, Pacific/Auckland).</summary>
    [Fact]
    public async Task What_is_due_counts_from_the_day_that_the_houses_clock_shows()
    {
        await using var house = new HouseFixture { Replaces = services => services.AddSingleton<TimeProvider>(new StoppedClock(new DateTimeOffset(2026, 9, 29, 20, 0, 0, TimeSpan.Zero))) };
        var contract = await SignedContract.StoreAsync(house, ApprovalRule.Replace);

        var inUtc = await DaysLeftAsync(house, contract);
        await house.InLedgerAsync(async db =>
        {
            (await db.Houses.SingleAsync(Stop)).ReadClocksIn("Pacific/Auckland");
            await db.SaveChangesAsync(Stop);
        });
        var inAuckland = await DaysLeftAsync(house, contract);

        Assert.Equal((1, 0), (inUtc, inAuckland)); // until 30 September
    }

    private static async Task<int> DaysLeftAsync(HouseFixture house, SignedContract contract) =>
        (await (await house.ScriptAsync(Role.Buyer)).GetFromJsonAsync<JsonElement>(new Uri("/api/due", UriKind.Relative), Stop)).EnumerateArray()
            .Single(line => line.GetProperty("kind").GetString() == "approval" && line.GetProperty("recordId").GetGuid() == contract.Id.Value).GetProperty("daysLeft").GetInt32();
}
