using GreenLedger.Data.Papers;
using GreenLedger.Data.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace GreenLedger.Data;

/// <summary>The ledger in PostgreSQL, for a house that runs several nodes.</summary>
public sealed class PostgresLedgerContext(DbContextOptions<PostgresLedgerContext> options) : LedgerContext(options)
{
    public static void Configure(DbContextOptionsBuilder options, string connection, Who? who = null, TimeProvider? clock = null) =>
        options.UseNpgsql(connection, postgres => postgres.MigrationsHistoryTable("__Migrations"))
            .AddInterceptors(new HistoryWriter(who ?? new Who(), clock ?? TimeProvider.System));

    /// <summary>An advisory lock of the database, until the transaction ends.</summary>
    internal override Task TakeTurnAsync(Turn turn, CancellationToken cancellationToken) =>
        Database.ExecuteSqlAsync($"SELECT pg_advisory_xact_lock({(long)turn})", cancellationToken);

    internal sealed class Factory : IDesignTimeDbContextFactory<PostgresLedgerContext>
    {
        public PostgresLedgerContext CreateDbContext(string[] args)
        {
            var options = new DbContextOptionsBuilder<PostgresLedgerContext>();
            Configure(options, "Host=localhost;Database=design-time");
            return new PostgresLedgerContext(options.Options);
        }
    }
}
