using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Sqlite
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
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<DateOnly>(
                name: "AvailableOn",
                table: "Shipments",
                type: "TEXT",
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
