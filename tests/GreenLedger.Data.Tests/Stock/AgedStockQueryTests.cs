using GreenLedger.Data.Stock;
using GreenLedger.Data.Tests.Demo;
using GreenLedger.Domain.Stock;
using MathNet.Numerics.LinearRegression;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Stock;

/// <summary>The demo's trend against MathNet.Numerics 5.0 (least squares with a column for each lot) over rows that SQL of its own reads.</summary>
[Collection(FilledDemo.Name)]
public sealed class AgedStockQueryTests(FilledDemo demo)
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task The_trend_is_that_of_a_regression_with_a_column_for_each_lot(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var form = (await db.QualityBands.AsNoTracking().OfHouseAsync(Stop)).FormId.Value;
        var rows = await db.Database.SqlQuery<ScoreLine>(
            $"""
            SELECT r."LotId", r."HeldOn", r."FittedMillionths" AS "Millionths" FROM "SampleResults" r JOIN "Samples" s ON s."Id" = r."SampleId"
            WHERE s."Kind" IN (3, 4) AND r."FormId" = {form} AND r."LotId" IN (
                SELECT o."LotId" FROM "SampleResults" o JOIN "Samples" p ON p."Id" = o."SampleId" WHERE p."Kind" IN (3, 4) AND o."FormId" = {form} GROUP BY o."LotId" HAVING COUNT(DISTINCT o."HeldOn") > 1)
            """).ToListAsync(Stop);
        var lots = rows.Select(row => row.LotId).Distinct().ToList();

        var stock = await new AgedStockQuery(db).FindAsync(Stop);

        Assert.True(lots.Count > 1, "the demo cups several lots again");
        double[][] x = [.. rows.Select(row => (double[])[row.HeldOn.DayNumber / AgeTrend.DaysOfMonth, .. lots.Select(lot => lot == row.LotId ? 1.0 : 0.0)])];
        var coefficients = MultipleRegression.QR(x, [.. rows.Select(row => row.Millionths / 1_000_000.0)], intercept: false);
        Assert.Equal(coefficients[0], stock.Trend!.PerMonth, 6);
        Assert.Equal((rows.Count, lots.Count), (stock.Trend.Scores, stock.Trend.Lots));
    }

    [Theory, EveryEngine]
    public async Task Every_lot_in_stock_is_told_with_its_age(Engine engine)
    {
        await using var db = await demo.OpenAsync(engine);
        var held = await db.Database.SqlQuery<long>($"""SELECT CAST(COUNT(*) AS bigint) AS "Value" FROM (SELECT "LotId" FROM "Movements" GROUP BY "LotId" HAVING SUM("WeighedMicrograms") > 0) lots""").SingleAsync(Stop);

        var stock = await new AgedStockQuery(db).FindAsync(Stop);

        Assert.Equal(held, stock.Lots.Count);
        Assert.Contains(stock.Lots, lot => lot.HarvestEnd is not null);
        Assert.All(stock.Lots, lot => Assert.True(lot.MonthsOn(DateOnly.FromDateTime(FilledDemo.Now.UtcDateTime)) >= 0));
    }

    private sealed record ScoreLine(Guid LotId, DateOnly HeldOn, long Millionths);
}
