using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace GreenLedger.Data;

/// <summary>Tells a write that another one was faster with from one that went wrong.</summary>
public static class RacedWrites
{
    private const int SqliteConstraint = 19;

    /// <summary>Whether the database refused it because a unique value is taken, or because what it points to is gone or in use.</summary>
    public static bool IsTaken(this DbUpdateException refused)
    {
        ArgumentNullException.ThrowIfNull(refused);
        return refused.InnerException switch
        {
            SqliteException sqlite => sqlite.SqliteErrorCode == SqliteConstraint && sqlite.SqliteExtendedErrorCode is 2067 or 1555 or 787,
            PostgresException postgres => postgres.SqlState is PostgresErrorCodes.UniqueViolation or PostgresErrorCodes.ForeignKeyViolation,
            _ => false,
        };
    }
}
