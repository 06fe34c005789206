using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class MapAndHistory : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "SourceId",
                table: "Contracts",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "EarlierScoreMillionths",
                table: "ContractLots",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "LandedCostCurrency",
                table: "ContractLots",
                type: "character varying(3)",
                maxLength: 3,
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "LandedCostMillionths",
                table: "ContractLots",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "LandedCostNanosPerKilogram",
                table: "ContractLots",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "LandedCostUnit",
                table: "ContractLots",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "ReceivedMicrograms",
                table: "ContractLots",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "ReceivedOn",
                table: "ContractLots",
                type: "date",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "IX_Contracts_SourceId",
                table: "Contracts",
                column: "SourceId");

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

            migrationBuilder.DropIndex(
                name: "IX_Contracts_SourceId",
                table: "Contracts");

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
