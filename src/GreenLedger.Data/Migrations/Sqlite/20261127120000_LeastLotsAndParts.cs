using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Sqlite
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
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<int>(
                name: "SeasonLots",
                table: "RecordHabits",
                type: "INTEGER",
                nullable: false,
                defaultValue: 5);

            migrationBuilder.AddColumn<int>(
                name: "SeasonMonths",
                table: "RecordHabits",
                type: "INTEGER",
                nullable: false,
                defaultValue: 12);

            migrationBuilder.AddColumn<int>(
                name: "SeasonSuppliers",
                table: "RecordHabits",
                type: "INTEGER",
                nullable: false,
                defaultValue: 3);

            migrationBuilder.AddColumn<int>(
                name: "FewestDecimals",
                table: "Plots",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "MostDecimals",
                table: "Plots",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "LeastBags",
                table: "Offers",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Gln",
                table: "ExchangeNames",
                type: "TEXT",
                maxLength: 13,
                nullable: true);

            migrationBuilder.AddColumn<DateTime>(
                name: "MistakenAt",
                table: "EvidenceFiles",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "MistakenBecause",
                table: "EvidenceFiles",
                type: "TEXT",
                maxLength: 500,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "ApprovalDays",
                table: "DueHabits",
                type: "INTEGER",
                nullable: false,
                defaultValue: 14);

            migrationBuilder.AddColumn<int>(
                name: "PastDays",
                table: "DueHabits",
                type: "INTEGER",
                nullable: false,
                defaultValue: 7);

            migrationBuilder.AddColumn<int>(
                name: "HarvestForm",
                table: "DueDiligences",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<long>(
                name: "HarvestMicrograms",
                table: "DueDiligences",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "MostPerHectare",
                table: "DiligenceHabits",
                type: "INTEGER",
                nullable: false,
                defaultValue: 5000);

            migrationBuilder.AddColumn<DateOnly>(
                name: "CoversFrom",
                table: "CostPostings",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "CoversUntil",
                table: "CostPostings",
                type: "TEXT",
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
        }
    }
}
