using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Data.Tests;

public sealed class LedgerDatabaseTests(Ledgers ledgers)
{
    [Theory, EveryEngine]
    public async Task Nodes_that_start_together_prepare_the_ledger_once(Engine engine)
    {
        await using var ledger = await ledgers.NewAsync(engine);

        await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(async () =>
        {
            await using var node = ledger.Open();
            await LedgerDatabase.PrepareAsync(node, TestContext.Current.CancellationToken);
        })));

        await using var db = ledger.Open();
        var codes = await db.Countries.Select(country => country.Code).ToListAsync(TestContext.Current.CancellationToken);
        Assert.NotEmpty(codes);
        Assert.Distinct(codes);
    }
}
