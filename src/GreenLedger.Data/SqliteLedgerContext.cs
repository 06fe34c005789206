using GreenLedger.Data.Papers;
using GreenLedger.Data.People;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace GreenLedger.Data;

/// <summary>The ledger in one SQLite file: write-ahead log, full durability, foreign keys, a busy time-out.</summary>
public sealed class SqliteLedgerContext(DbContextOptions<SqliteLedgerContext> options) : LedgerContext(options)
{
    /// <summary>Options for the file; every connection gets the same settings.</summary>
    public static void Configure(DbContextOptionsBuilder options, string file, Who? who = null, TimeProvider? clock = null) => options
        .UseSqlite(
            new SqliteConnectionStringBuilder { DataSource = file, ForeignKeys = true, DefaultTimeout = 30 }.ToString(),
            sqlite => sqlite.MigrationsHistoryTable("__Migrations"))
        // A changed key is a table made anew, for which SQLite leaves its foreign keys alone for a moment: nothing to act on.
        .ConfigureWarnings(warnings => warnings.Ignore(RelationalEventId.NonTransactionalMigrationOperationWarning))
        .AddInterceptors(SqliteSettings.Instance, new HistoryWriter(who ?? new Who(), clock ?? TimeProvider.System));

    internal sealed class Factory : IDesignTimeDbContextFactory<SqliteLedgerContext>
    {
        public SqliteLedgerContext CreateDbContext(string[] args)
        {
            var options = new DbContextOptionsBuilder<SqliteLedgerContext>();
            Configure(options, "design-time.db");
            return new SqliteLedgerContext(options.Options);
        }
    }
}
