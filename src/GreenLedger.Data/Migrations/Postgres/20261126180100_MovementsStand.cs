using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
{
    /// <summary>The stock ledger is only added to: the database refuses to change or remove a movement.</summary>
    [DbContext(typeof(PostgresLedgerContext))]
    [Migration("20261126180100_MovementsStand")]
    public sealed class MovementsStand : Migration
    {
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""
                CREATE FUNCTION movements_stand() RETURNS trigger LANGUAGE plpgsql AS
                $$ BEGIN RAISE EXCEPTION 'A movement of stock is never changed or removed: add a reversal.'; END $$;
                """);
            migrationBuilder.Sql("""
                CREATE TRIGGER "Movements_stand" BEFORE UPDATE OR DELETE ON "Movements"
                FOR EACH ROW EXECUTE FUNCTION movements_stand();
                """);
            migrationBuilder.Sql("""
                CREATE TRIGGER "Movements_are_not_emptied" BEFORE TRUNCATE ON "Movements"
                FOR EACH STATEMENT EXECUTE FUNCTION movements_stand();
                """);
        }

        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.Sql("""DROP TRIGGER "Movements_stand" ON "Movements";""");
            migrationBuilder.Sql("""DROP TRIGGER "Movements_are_not_emptied" ON "Movements";""");
            migrationBuilder.Sql("DROP FUNCTION movements_stand();");
        }
    }
}
