using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class ClaimsToRecall : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "WeighFrom",
                table: "StandardForms",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<DateOnly>(
                name: "AvailableOn",
                table: "Shipments",
                type: "date",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "WeighFrom",
                table: "StandardForms");

            migrationBuilder.DropColumn(
                name: "AvailableOn",
                table: "Shipments");
        }
    }
}
