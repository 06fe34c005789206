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
            migrationBuilder.AddColumn<long>(
                name: "MoistureDriftTenThousandths",
                table: "StockHabits",
                type: "INTEGER",
                nullable: false,
                defaultValue: 10000L);

            migrationBuilder.AddColumn<int>(
                name: "PastCropMonths",
                table: "StockHabits",
                type: "INTEGER",
                nullable: false,
                defaultValue: 12);

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

            migrationBuilder.AlterColumn<Guid>(
                name: "ArrivalId",
                table: "Claims",
                type: "TEXT",
                nullable: true,
                oldClrType: typeof(Guid),
                oldType: "TEXT");

            migrationBuilder.AddColumn<Guid>(
                name: "ShipmentId",
                table: "Claims",
                type: "TEXT",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "ArchiveTakings",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ArchiveTakings", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ArchiveTakings_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Claims_ShipmentId",
                table: "Claims",
                column: "ShipmentId");

            migrationBuilder.CreateIndex(
                name: "IX_ArchiveTakings_By",
                table: "ArchiveTakings",
                column: "By");

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

            migrationBuilder.DropTable(
                name: "ArchiveTakings");

            migrationBuilder.DropIndex(
                name: "IX_Claims_ShipmentId",
                table: "Claims");

            migrationBuilder.DropColumn(
                name: "MoistureDriftTenThousandths",
                table: "StockHabits");

            migrationBuilder.DropColumn(
                name: "PastCropMonths",
                table: "StockHabits");

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
                type: "TEXT",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"),
                oldClrType: typeof(Guid),
                oldType: "TEXT",
                oldNullable: true);
        }
    }
}
