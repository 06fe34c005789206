using System.Globalization;
using System.Text;
using GreenLedger.Data;
using GreenLedger.Data.Offers;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using GreenLedger.Web.Display;
using GreenLedger.Web.Offers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;

namespace GreenLedger.Web.Tests.Offers;

/// <summary>
/// Nodes that do jobs over one SQLite file, with a clock of their own and no web server: a node works when a test says so.
/// </summary>
internal sealed class Nodes : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("greenledger-nodes-").FullName;
    private readonly ServiceProvider _services;

    public Nodes()
    {
        var settings = new ConfigurationBuilder().AddInMemoryCollection([new("GreenLedger:Data", _folder)]).Build();
        _services = new ServiceCollection()
            .AddSingleton<TimeProvider>(Clock).AddScoped(_ => new Who()).AddLedger(settings)
            .AddScoped<ListStore>().AddScoped<ListLoading>().AddScoped<HouseZone>().AddScoped<IWork, ListWork>().AddScoped<IWork, PreviewWork>().AddSingleton<JobProgress>()
            .BuildServiceProvider();
    }

    public StoppedClock Clock { get; } = new(new DateTimeOffset(2026, 11, 25, 9, 0, 0, TimeSpan.Zero));

    public Person Buyer { get; } = new("Tilda Brand", Role.Buyer);

    public JobProgress Progress => _services.GetRequiredService<JobProgress>();

    public JobWorker Node() => new(_services.GetRequiredService<IServiceScopeFactory>(), Progress, Clock, NullLogger<JobWorker>.Instance);

    /// <summary>A ledger with the reference data and the buyer.</summary>
    public Task OpenAsync() => InLedgerAsync(async (db, _) =>
    {
        await LedgerDatabase.PrepareAsync(db);
        if (!await db.Countries.AnyAsync())
        {
            db.Countries.AddRange(StandardCountries.All());
            db.ProcessMethods.AddRange(StandardProcessMethods.All());
        }

        db.People.Add(Buyer);
        await db.SaveChangesAsync();
    });

    /// <summary>Parks a list of so many rows and orders it; <paramref name="text"/> is the list where it is another one.</summary>
    public async Task<Id<Job>> OrderAsync(int rows, string? text = null, string kind = ListWork.Load)
    {
        Id<Job> id = default;
        await InLedgerAsync(async (db, loading) =>
        {
            var file = await loading.ParkAsync("long.csv", "text/csv", Encoding.UTF8.GetBytes(text ?? Rows(rows)), Buyer.Id, default);
            var list = await loading.OpenAsync(file, "Long Traders", null, default);
            id = loading.Order(list, "Long Traders", new DateOnly(2026, 11, 25), Buyer.Id, kind).Id;
            await db.SaveChangesAsync();
        });
        return id;
    }

    public async Task InLedgerAsync(Func<LedgerContext, ListLoading, Task> work)
    {
        await using var scope = _services.CreateAsyncScope();
        await work(scope.ServiceProvider.GetRequiredService<LedgerContext>(), scope.ServiceProvider.GetRequiredService<ListLoading>());
    }

    public async Task<T> FromLedgerAsync<T>(Func<LedgerContext, Task<T>> read)
    {
        await using var scope = _services.CreateAsyncScope();
        return await read(scope.ServiceProvider.GetRequiredService<LedgerContext>());
    }

    public Task<Job> JobAsync(Id<Job> id) => FromLedgerAsync(db => db.Jobs.AsNoTracking().SingleAsync(job => job.Id == id));

    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    private static string Rows(int count)
    {
        var text = new StringBuilder("Ref;Country;Process;Score;Bags;kg/bag;USD/kg\n");
        for (var row = 1; row <= count; row++)
        {
            text.Append(CultureInfo.InvariantCulture, $"L-{row};Kenya;washed;{80 + (row % 10)};{row};60;9.85\n");
        }

        return text.ToString();
    }
}
