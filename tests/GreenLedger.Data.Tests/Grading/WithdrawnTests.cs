using GreenLedger.Data.Cupping;
using GreenLedger.Data.Grading;
using GreenLedger.Data.Samples;
using GreenLedger.Data.Tests.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Roasting;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Grading;

public sealed class WithdrawnTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Noon = new(2026, 11, 25, 12, 0, 0, TimeSpan.Zero);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Theory, EveryEngine]
    public async Task A_withdrawn_grade_and_roast_count_nowhere_and_are_found_by_who_asks_for_them(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var table = new OpenTable();
        await table.StoreAsync(ledger);
        var grade = new GreenGrade(table.FreeSample.Id, table.Free.Id, new DateOnly(2026, 11, 25), table.Buyer.Id, Weight.FromGrams(350));
        var roast = new SampleRoast(table.FreeSample, Noon, table.Buyer.Id, null).Weigh(Weight.FromGrams(100), null);
        await using (var db = ledger.Open())
        {
            db.AddRange(grade, roast);
            await db.SaveChangesAsync(Stop);
            Assert.True(await db.IsUsedAsync(table.FreeSample, Stop));
        }

        await using (var db = ledger.Open())
        {
            (await db.GreenGrades.SingleAsync(Stop)).Withdraw("another bag", table.Buyer.Id, Noon);
            (await db.SampleRoasts.SingleAsync(Stop)).Withdraw("another batch", table.Buyer.Id, Noon);
            await db.SaveChangesAsync(Stop);
        }

        await using var read = ledger.Open();
        Assert.False(await read.IsUsedAsync(table.FreeSample, Stop));
        Assert.Equal(0, await new GradeQuery(read).CountAsync(null, Seal.None, Stop));
        Assert.Equal("another bag", (await read.GreenGrades.WithWithdrawn().SingleAsync(Stop)).WithdrawnBecause);
        Assert.Equal("another batch", (await read.SampleRoasts.WithWithdrawn().SingleAsync(Stop)).WithdrawnBecause);
    }
}
