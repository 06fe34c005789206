using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class CuppingTable : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "SearchText",
                table: "People",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<long>(
                name: "RepeatabilityMillionths",
                table: "PanelResults",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "ReproducibilityMillionths",
                table: "PanelResults",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "SearchText",
                table: "OfferLists",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<int>(
                name: "Version",
                table: "GreenGrades",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<string>(
                name: "SearchText",
                table: "CuppingSessions",
                type: "text",
                nullable: false,
                defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "SearchText",
                table: "People");

            migrationBuilder.DropColumn(
                name: "RepeatabilityMillionths",
                table: "PanelResults");

            migrationBuilder.DropColumn(
                name: "ReproducibilityMillionths",
                table: "PanelResults");

            migrationBuilder.DropColumn(
                name: "SearchText",
                table: "OfferLists");

            migrationBuilder.DropColumn(
                name: "Version",
                table: "GreenGrades");

            migrationBuilder.DropColumn(
                name: "SearchText",
                table: "CuppingSessions");
        }
    }
}
