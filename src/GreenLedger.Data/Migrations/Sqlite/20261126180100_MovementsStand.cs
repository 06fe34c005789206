using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Sqlite
{
    /// <summary>The stock ledger is only added to: the database refuses to change or remove a movement.</summary>
    [DbContext(typeof(SqliteLedgerContext))]
    [Migration("20261126180100_MovementsStand")]
    public sealed class MovementsStand : Migration
    {
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""
                CREATE TRIGGER "Movements_are_not_changed" BEFORE UPDATE ON "Movements"
                BEGIN SELECT RAISE(ABORT, 'A movement of stock is never changed: add a reversal.'); END;
                """);
            migrationBuilder.Sql("""
                CREATE TRIGGER "Movements_are_not_removed" BEFORE DELETE ON "Movements"
                BEGIN SELECT RAISE(ABORT, 'A movement of stock is never removed: add a reversal.'); END;
                """);
        }

        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""DROP TRIGGER "Movements_are_not_changed";""");
            migrationBuilder.Sql("""DROP TRIGGER "Movements_are_not_removed";""");
        }
    }
}
