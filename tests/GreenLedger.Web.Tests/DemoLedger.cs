using GreenLedger.SeedDemo;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Tests;

/// <summary>
/// The demo in an SQLite file, with a person for each role beside its own people. It is filled once for all tests, by the
/// first that asks; each works on a copy.
/// </summary>
public sealed class DemoLedger : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("greenledger-demo-").FullName;
    private readonly Lazy<Task> _filled;

    public DemoLedger()
    {
        _filled = new Lazy<Task>(FillAsync);
    }

    private string File => Path.Combine(_folder, "demo.db");

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    /// <summary>A house of its own that holds the demo, not started yet.</summary>
    public async Task<HouseFixture> HouseAsync()
    {
        await _filled.Value;
        return new HouseFixture { Ledger = File };
    }

    public ValueTask DisposeAsync()
    {
        Directory.Delete(_folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    private async Task FillAsync()
    {
        await using var house = new HouseFixture();
        await house.InLedgerAsync(db => DemoSeed.FillAsync(db, DateTimeOffset.UtcNow));
        await house.AddRolesAsync();
        await house.InLedgerAsync(db => db.Database.ExecuteSqlAsync($"VACUUM INTO {File}"));
    }
}
