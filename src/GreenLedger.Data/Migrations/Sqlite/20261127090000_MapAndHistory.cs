using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class MapAndHistory : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateOnly>(
                name: "PlacedOn",
                table: "DueDiligences",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "SourceId",
                table: "Contracts",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "EarlierScoreMillionths",
                table: "ContractLots",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "LandedCostCurrency",
                table: "ContractLots",
                type: "TEXT",
                maxLength: 3,
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "LandedCostMillionths",
                table: "ContractLots",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "LandedCostNanosPerKilogram",
                table: "ContractLots",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "LandedCostUnit",
                table: "ContractLots",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "ReceivedMicrograms",
                table: "ContractLots",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "ReceivedOn",
                table: "ContractLots",
                type: "TEXT",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "DiligenceHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    Size = table.Column<int>(type: "INTEGER", nullable: true),
                    AppliesGenerally = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    AppliesToSmall = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    NotDeforestedAfter = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    KeepYears = table.Column<int>(type: "INTEGER", nullable: false),
                    ExportMegabytes = table.Column<int>(type: "INTEGER", nullable: false),
                    Source = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DiligenceHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "EvidenceFiles",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    AttachmentId = table.Column<Guid>(type: "TEXT", nullable: false),
                    DueDiligenceId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_EvidenceFiles", x => x.Id);
                    table.ForeignKey(
                        name: "FK_EvidenceFiles_Attachments_AttachmentId",
                        column: x => x.AttachmentId,
                        principalTable: "Attachments",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_EvidenceFiles_DueDiligences_DueDiligenceId",
                        column: x => x.DueDiligenceId,
                        principalTable: "DueDiligences",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Contracts_SourceId",
                table: "Contracts",
                column: "SourceId");

            migrationBuilder.CreateIndex(
                name: "IX_EvidenceFiles_AttachmentId",
                table: "EvidenceFiles",
                column: "AttachmentId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_EvidenceFiles_DueDiligenceId",
                table: "EvidenceFiles",
                column: "DueDiligenceId");

            migrationBuilder.AddForeignKey(
                name: "FK_Contracts_StoredFiles_SourceId",
                table: "Contracts",
                column: "SourceId",
                principalTable: "StoredFiles",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "FK_Contracts_StoredFiles_SourceId",
                table: "Contracts");

            migrationBuilder.DropTable(
                name: "DiligenceHabits");

            migrationBuilder.DropTable(
                name: "EvidenceFiles");

            migrationBuilder.DropIndex(
                name: "IX_Contracts_SourceId",
                table: "Contracts");

            migrationBuilder.DropColumn(
                name: "PlacedOn",
                table: "DueDiligences");

            migrationBuilder.DropColumn(
                name: "SourceId",
                table: "Contracts");

            migrationBuilder.DropColumn(
                name: "EarlierScoreMillionths",
                table: "ContractLots");

            migrationBuilder.DropColumn(
                name: "LandedCostCurrency",
                table: "ContractLots");

            migrationBuilder.DropColumn(
                name: "LandedCostMillionths",
                table: "ContractLots");

            migrationBuilder.DropColumn(
                name: "LandedCostNanosPerKilogram",
                table: "ContractLots");

            migrationBuilder.DropColumn(
                name: "LandedCostUnit",
                table: "ContractLots");

            migrationBuilder.DropColumn(
                name: "ReceivedMicrograms",
                table: "ContractLots");

            migrationBuilder.DropColumn(
                name: "ReceivedOn",
                table: "ContractLots");
        }
    }
}
