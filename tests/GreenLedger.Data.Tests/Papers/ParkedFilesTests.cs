using GreenLedger.Data.Papers;
using GreenLedger.Domain.Papers;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests.Papers;

public sealed class ParkedFilesTests(Ledgers ledgers)
{
    private static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 30, 0, TimeSpan.Zero);

    [Theory, EveryEngine]
    public async Task A_file_that_is_parked_for_more_than_a_day_goes_with_its_bytes(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);
        var forgotten = new StoredFile("forgotten.csv", "text/csv", [1], null, Now.AddHours(-25));
        var waiting = new StoredFile("waiting.csv", "text/csv", [2], null, Now.AddHours(-23));
        var kept = new StoredFile("kept.csv", "text/csv", [3], null, Now.AddDays(-400));
        kept.Keep();
        await using (var db = ledger.Open())
        {
            db.AddRange(forgotten, waiting, kept);
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        await using var sweep = ledger.Open();
        var swept = await ParkedFiles.SweepAsync(sweep, Now, TestContext.Current.CancellationToken);

        Assert.Equal(1, swept);
        Assert.Equal(
            ["kept.csv", "waiting.csv"],
            await sweep.StoredFiles.Select(file => file.Name).OrderBy(name => name).ToListAsync(TestContext.Current.CancellationToken));
        Assert.Equal(2, await sweep.Set<StoredBytes>().CountAsync(TestContext.Current.CancellationToken));
    }
}
