using AutoMapper;
using GreenLedger.Data.Contracts;
using GreenLedger.Data.Cupping;
using GreenLedger.Data.Grading;
using GreenLedger.Data.Origins;
using GreenLedger.Data.People;
using GreenLedger.Data.Search;
using GreenLedger.Data.Shipments;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;

namespace GreenLedger.Data;

/// <summary>Chooses and prepares the database that the settings name.</summary>
public static class LedgerDatabase
{
    /// <summary>Any number that nothing else on the server locks by.</summary>
    private const long MigrationLock = 0x_47_4C_4D_49_47;

    /// <summary>
    /// Registers <see cref="LedgerContext"/> and the query mapper. <c>GreenLedger:Database</c> is <c>sqlite</c>
    /// (default; the file <c>ledger.db</c> in the data folder) or <c>postgres</c> (connection string
    /// <c>GreenLedger</c>).
    /// </summary>
    /// <exception cref="InvalidOperationException">The settings name no database that the ledger knows.</exception>
    public static IServiceCollection AddLedger(this IServiceCollection services, IConfiguration configuration)
    {
        switch ((configuration["GreenLedger:Database"] ?? "sqlite").ToLowerInvariant())
        {
            case "sqlite":
                services.AddDbContext<LedgerContext, SqliteLedgerContext>(
                    (provider, options) => SqliteLedgerContext.Configure(options, SqliteFile(configuration), provider.GetService<Who>(), provider.GetService<TimeProvider>()));
                break;
            case "postgres":
                var connection = configuration.GetConnectionString("GreenLedger")
                    ?? throw new InvalidOperationException(
                        "Set ConnectionStrings__GreenLedger to the PostgreSQL connection string, or leave GreenLedger__Database out to use SQLite.");
                services.AddDbContext<LedgerContext, PostgresLedgerContext>(
                    (provider, options) => PostgresLedgerContext.Configure(options, connection, provider.GetService<Who>(), provider.GetService<TimeProvider>()));
                break;
            case var other:
                throw new InvalidOperationException($"GreenLedger__Database is '{other}': use sqlite or postgres.");
        }

        foreach (var query in typeof(LedgerDatabase).Assembly.GetTypes().Where(IsQuery))
        {
            services.AddScoped(query);
        }

        return services.AddSingleton(Mapper()).AddSingleton(provider => provider.GetRequiredService<MapperConfiguration>().CreateMapper());
    }

    /// <summary>The folder that holds the database file: <c>GreenLedger:Data</c>, else <c>data</c> here.</summary>
    public static string Folder(IConfiguration configuration) =>
        Path.GetFullPath(configuration["GreenLedger:Data"] is { Length: > 0 } folder ? folder : "data");

    /// <summary>Every projection of the ledger, validated once.</summary>
    public static MapperConfiguration Mapper() => new(configuration => configuration.AddMaps(typeof(LedgerDatabase).Assembly));

    /// <summary>
    /// Creates the database where there is none and brings an older one up to date. Of nodes that start together one
    /// does the work and the others wait for it.
    /// </summary>
    public static async Task PrepareAsync(LedgerContext db, CancellationToken cancellationToken = default)
    {
        await MigrateAsync(db, cancellationToken);
        await using var transaction = await db.Database.BeginTransactionAsync(cancellationToken);
        await db.TakeTurnAsync(Turn.Preparing, cancellationToken);
        await OriginsReference.FillAsync(db, cancellationToken);
        await GradingReference.FillAsync(db, cancellationToken);
        await CuppingReference.FillAsync(db, cancellationToken);
        await ContractsReference.FillAsync(db, cancellationToken);
        await ShipmentsReference.FillAsync(db, cancellationToken);
        await SearchTexts.FillAsync(db, cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    /// <summary>
    /// Between two migrations the framework lets its own lock on PostgreSQL go, and a second node, which listed what is
    /// missing before, would then run again what the first has just run. This lock holds until the last one.
    /// </summary>
    private static async Task MigrateAsync(LedgerContext db, CancellationToken cancellationToken)
    {
        // Most starts find nothing to do, and the framework would first compare the whole model with its last picture.
        if (!(await db.Database.GetPendingMigrationsAsync(cancellationToken)).Any())
        {
            return;
        }

        if (db is not PostgresLedgerContext || !await db.Database.CanConnectAsync(cancellationToken))
        {
            await db.Database.MigrateAsync(cancellationToken);
            return;
        }

        var patience = db.Database.GetCommandTimeout();
        db.Database.SetCommandTimeout(TimeSpan.FromMinutes(10));
        await db.Database.OpenConnectionAsync(cancellationToken);
        try
        {
            await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_lock({MigrationLock})", cancellationToken);
            await db.Database.MigrateAsync(cancellationToken);
            await db.Database.ExecuteSqlAsync($"SELECT pg_advisory_unlock({MigrationLock})", cancellationToken);
        }
        finally
        {
            await db.Database.CloseConnectionAsync();
            db.Database.SetCommandTimeout(patience);
        }
    }

    /// <summary>Every public class <c>&lt;Name&gt;Query</c> of this project can be asked for by pages and API.</summary>
    private static bool IsQuery(Type type) =>
        type is { IsClass: true, IsAbstract: false, IsPublic: true } && type.Name.EndsWith("Query", StringComparison.Ordinal);

    private static string SqliteFile(IConfiguration configuration)
    {
        var folder = Folder(configuration);
        Directory.CreateDirectory(folder);
        return Path.Combine(folder, "ledger.db");
    }
}
