using GreenLedger.Data.Summaries;
using GreenLedger.Data.Tests.Demo;
using GreenLedger.Domain.Measures;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Summaries;

/// <summary>The demo's position against SQL of its own.</summary>
[Collection(FilledDemo.Name)]
public sealed class MarketPositionQueryTests(FilledDemo demo)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task Stock_over_all_months_is_what_the_movements_add_up_to(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var moved = await db.Database.SqlQuery<long>($"""SELECT CAST(SUM("WeighedMicrograms") AS bigint) AS "Value" FROM "Movements" """).SingleAsync(Stop);

        var total = (await new MarketPositionQuery(db).FindAsync(Stop)).Total;

        Assert.True(moved > 0, "the demo has stock");
        Assert.Equal(moved, total.InStock.Micrograms);
    }

    [Theory, EveryEngine]
    public async Task Contracted_is_every_open_contract_and_unpriced_its_share_that_is_not_fixed(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var contracted = await db.Database.SqlQuery<long>(
            $"""
            SELECT CAST(SUM(cl."Bags" * cl."BagWeightMicrograms") AS bigint) AS "Value"
            FROM "ContractLots" cl JOIN "Contracts" c ON c."Id" = cl."ContractId" WHERE c."Goods" NOT IN (0, 5, 6)
            """).SingleAsync(Stop);
        var open = await db.Database.SqlQuery<MonthSum>(
            $"""SELECT "OpenMonth" AS "Month", CAST(SUM("OpenWeightMicrograms") AS bigint) AS "Micrograms" FROM "Contracts" WHERE "OpenMonth" IS NOT NULL AND "Goods" <> 0 GROUP BY "OpenMonth" """).ToListAsync(Stop);

        var position = await new MarketPositionQuery(db).FindAsync(Stop);

        Assert.Equal(contracted, position.Total.Contracted.Micrograms);
        Assert.True(open.Count > 1, "the demo has to fix in several months");
        Assert.Equal(open.Select(one => (one.Month, one.Micrograms)).Order(), position.Rows.Where(row => row.ToFix.Micrograms > 0).Select(row => ($"{row.Month!.Value.Market.Root()}{row.Month.Value.Year}-{row.Month.Value.Month:00}", row.ToFix.Micrograms)).Order());
    }

    private sealed record MonthSum(string Month, long Micrograms);
}
