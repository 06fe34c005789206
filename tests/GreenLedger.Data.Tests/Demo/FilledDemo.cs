using System.Collections.Concurrent;
using GreenLedger.SeedDemo;

namespace GreenLedger.Data.Tests.Demo;

[CollectionDefinition(FilledDemo.Name)]
public sealed class OneDemo : ICollectionFixture<FilledDemo>;

/// <summary>The demo as of one day, filled once for each engine; tests read it and change nothing.</summary>
public sealed class FilledDemo(Ledgers ledgers) : IAsyncDisposable
{
    public const string Name = "The demo";

    public static readonly DateTimeOffset Now = new(2026, 11, 25, 9, 30, 0, TimeSpan.Zero);

    private readonly ConcurrentDictionary<Engine, Lazy<Task<(Ledger Ledger, DemoAccess Access)>>> _filled = new();

    public Task<(Ledger Ledger, DemoAccess Access)> OnAsync(Engine engine) =>
        _filled.GetOrAdd(engine, one => new Lazy<Task<(Ledger, DemoAccess)>>(() => FillAsync(one))).Value;

    public async Task<LedgerContext> OpenAsync(Engine engine) => (await OnAsync(engine)).Ledger.Open();

    public async ValueTask DisposeAsync()
    {
        foreach (var filled in _filled.Values)
        {
            await (await filled.Value).Ledger.DisposeAsync();
        }
    }

    private async Task<(Ledger, DemoAccess)> FillAsync(Engine engine)
    {
        var ledger = await ledgers.NewAsync(engine);
        await using var db = ledger.Open();
        return (ledger, await DemoSeed.FillAsync(db, Now));
    }
}
