using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class ArrivalToStock : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateOnly>(
                name: "BoardedOn",
                table: "ShipmentLots",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "IsUnapproved",
                table: "ShipmentLots",
                type: "boolean",
                nullable: false,
                defaultValue: false);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "BoardedOn",
                table: "ShipmentLots");

            migrationBuilder.DropColumn(
                name: "IsUnapproved",
                table: "ShipmentLots");
        }
    }
}
