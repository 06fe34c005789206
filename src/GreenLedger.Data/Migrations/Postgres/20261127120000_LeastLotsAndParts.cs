using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class LeastLotsAndParts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "LeastBags",
                table: "Offers",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "CoversFrom",
                table: "CostPostings",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "CoversUntil",
                table: "CostPostings",
                type: "date",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "LeastBags",
                table: "Offers");

            migrationBuilder.DropColumn(
                name: "CoversFrom",
                table: "CostPostings");

            migrationBuilder.DropColumn(
                name: "CoversUntil",
                table: "CostPostings");
        }
    }
}
