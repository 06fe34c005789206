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
            migrationBuilder.AddColumn<bool>(
                name: "IsRoastLossStated",
                table: "StockHabits",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<int>(
                name: "SeasonLots",
                table: "RecordHabits",
                type: "integer",
                nullable: false,
                defaultValue: 5);

            migrationBuilder.AddColumn<int>(
                name: "SeasonMonths",
                table: "RecordHabits",
                type: "integer",
                nullable: false,
                defaultValue: 12);

            migrationBuilder.AddColumn<int>(
                name: "SeasonSuppliers",
                table: "RecordHabits",
                type: "integer",
                nullable: false,
                defaultValue: 3);

            migrationBuilder.AddColumn<int>(
                name: "FewestDecimals",
                table: "Plots",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "MostDecimals",
                table: "Plots",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "LeastBags",
                table: "Offers",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Gln",
                table: "ExchangeNames",
                type: "character varying(13)",
                maxLength: 13,
                nullable: true);

            migrationBuilder.AddColumn<DateTime>(
                name: "MistakenAt",
                table: "EvidenceFiles",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "MistakenBecause",
                table: "EvidenceFiles",
                type: "character varying(500)",
                maxLength: 500,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "ApprovalDays",
                table: "DueHabits",
                type: "integer",
                nullable: false,
                defaultValue: 14);

            migrationBuilder.AddColumn<int>(
                name: "PastDays",
                table: "DueHabits",
                type: "integer",
                nullable: false,
                defaultValue: 7);

            migrationBuilder.AlterColumn<string>(
                name: "StatementReference",
                table: "DueDiligences",
                type: "character varying(60)",
                maxLength: 60,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(14)",
                oldMaxLength: 14,
                oldNullable: true);

            migrationBuilder.AddColumn<int>(
                name: "HarvestForm",
                table: "DueDiligences",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<long>(
                name: "HarvestMicrograms",
                table: "DueDiligences",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "MostPerHectare",
                table: "DiligenceHabits",
                type: "integer",
                nullable: false,
                defaultValue: 5000);

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
                name: "IsRoastLossStated",
                table: "StockHabits");

            migrationBuilder.DropColumn(
                name: "SeasonLots",
                table: "RecordHabits");

            migrationBuilder.DropColumn(
                name: "SeasonMonths",
                table: "RecordHabits");

            migrationBuilder.DropColumn(
                name: "SeasonSuppliers",
                table: "RecordHabits");

            migrationBuilder.DropColumn(
                name: "FewestDecimals",
                table: "Plots");

            migrationBuilder.DropColumn(
                name: "MostDecimals",
                table: "Plots");

            migrationBuilder.DropColumn(
                name: "LeastBags",
                table: "Offers");

            migrationBuilder.DropColumn(
                name: "Gln",
                table: "ExchangeNames");

            migrationBuilder.DropColumn(
                name: "MistakenAt",
                table: "EvidenceFiles");

            migrationBuilder.DropColumn(
                name: "MistakenBecause",
                table: "EvidenceFiles");

            migrationBuilder.DropColumn(
                name: "ApprovalDays",
                table: "DueHabits");

            migrationBuilder.DropColumn(
                name: "PastDays",
                table: "DueHabits");

            migrationBuilder.DropColumn(
                name: "HarvestForm",
                table: "DueDiligences");

            migrationBuilder.DropColumn(
                name: "HarvestMicrograms",
                table: "DueDiligences");

            migrationBuilder.DropColumn(
                name: "MostPerHectare",
                table: "DiligenceHabits");

            migrationBuilder.DropColumn(
                name: "CoversFrom",
                table: "CostPostings");

            migrationBuilder.DropColumn(
                name: "CoversUntil",
                table: "CostPostings");

            migrationBuilder.AlterColumn<string>(
                name: "StatementReference",
                table: "DueDiligences",
                type: "character varying(14)",
                maxLength: 14,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(60)",
                oldMaxLength: 60,
                oldNullable: true);
        }
    }
}
