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

            migrationBuilder.AlterColumn<Guid>(
                name: "ArrivalId",
                table: "Claims",
                type: "uuid",
                nullable: true,
                oldClrType: typeof(Guid),
                oldType: "uuid");

            migrationBuilder.AddColumn<Guid>(
                name: "ShipmentId",
                table: "Claims",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "IX_Claims_ShipmentId",
                table: "Claims",
                column: "ShipmentId");

            migrationBuilder.AddForeignKey(
                name: "FK_Claims_Shipments_ShipmentId",
                table: "Claims",
                column: "ShipmentId",
                principalTable: "Shipments",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "FK_Claims_Shipments_ShipmentId",
                table: "Claims");

            migrationBuilder.DropIndex(
                name: "IX_Claims_ShipmentId",
                table: "Claims");

            migrationBuilder.DropColumn(
                name: "WeighFrom",
                table: "StandardForms");

            migrationBuilder.DropColumn(
                name: "AvailableOn",
                table: "Shipments");

            migrationBuilder.DropColumn(
                name: "ShipmentId",
                table: "Claims");

            migrationBuilder.AlterColumn<Guid>(
                name: "ArrivalId",
                table: "Claims",
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"),
                oldClrType: typeof(Guid),
                oldType: "uuid",
                oldNullable: true);
        }
    }
}
