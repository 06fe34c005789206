using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Contracts : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateTime>(
                name: "WithdrawnAt",
                table: "SampleRoasts",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "WithdrawnBecause",
                table: "SampleRoasts",
                type: "character varying(500)",
                maxLength: 500,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "WithdrawnBy",
                table: "SampleRoasts",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Found",
                table: "Jobs",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "TimeZone",
                table: "Houses",
                type: "character varying(60)",
                maxLength: 60,
                nullable: false,
                defaultValue: "Etc/UTC");

            migrationBuilder.AddColumn<DateTime>(
                name: "WithdrawnAt",
                table: "GreenGrades",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "WithdrawnBecause",
                table: "GreenGrades",
                type: "character varying(500)",
                maxLength: 500,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "WithdrawnBy",
                table: "GreenGrades",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<DateTime>(
                name: "WithdrawnAt",
                table: "DiscussedScores",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "WithdrawnBecause",
                table: "DiscussedScores",
                type: "character varying(500)",
                maxLength: 500,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "WithdrawnBy",
                table: "DiscussedScores",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "IsRetired",
                table: "Descriptors",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<int>(
                name: "Version",
                table: "Descriptors",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<string>(
                name: "Reason",
                table: "DescriptiveForms",
                type: "character varying(500)",
                maxLength: 500,
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "StatedRepeatabilityMillionths",
                table: "CuppingHabits",
                type: "bigint",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "ArrivalHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    BetweenSessionsMillionths = table.Column<long>(type: "bigint", nullable: true),
                    ToleranceMillionths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ArrivalHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Contracts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Ref = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    SupplierId = table.Column<Guid>(type: "uuid", nullable: false),
                    Goods = table.Column<int>(type: "integer", nullable: false),
                    Price = table.Column<int>(type: "integer", nullable: false),
                    ShipFrom = table.Column<DateOnly>(type: "date", nullable: false),
                    ShipUntil = table.Column<DateOnly>(type: "date", nullable: false),
                    OpenMonth = table.Column<string>(type: "character varying(9)", maxLength: 9, nullable: true),
                    SearchText = table.Column<string>(type: "text", nullable: false),
                    NetWeightMicrograms = table.Column<long>(type: "bigint", nullable: false),
                    OpenWeightMicrograms = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Contracts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Contracts_Suppliers_SupplierId",
                        column: x => x.SupplierId,
                        principalTable: "Suppliers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ExchangeHolidays",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Market = table.Column<int>(type: "integer", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ExchangeHolidays", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "FixingHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    ArabicaNoticeDays = table.Column<int>(type: "integer", nullable: false),
                    RobustaNoticeDays = table.Column<int>(type: "integer", nullable: false),
                    ArabicaTradingDays = table.Column<int>(type: "integer", nullable: false),
                    RobustaTradingDays = table.Column<int>(type: "integer", nullable: false),
                    MarginDays = table.Column<int>(type: "integer", nullable: false),
                    WarningDays = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FixingHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Shipments",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Ref = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    BillOfLading = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Vessel = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: true),
                    Voyage = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    PortOfLoading = table.Column<string>(type: "character varying(5)", maxLength: 5, nullable: false),
                    PortOfDestination = table.Column<string>(type: "character varying(5)", maxLength: 5, nullable: false),
                    PlannedDeparture = table.Column<DateOnly>(type: "date", nullable: true),
                    PlannedArrival = table.Column<DateOnly>(type: "date", nullable: true),
                    ShippedOn = table.Column<DateOnly>(type: "date", nullable: true),
                    DischargedOn = table.Column<DateOnly>(type: "date", nullable: true),
                    ClearedOn = table.Column<DateOnly>(type: "date", nullable: true),
                    SearchText = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Shipments", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "StandardForms",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Edition = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Arbitration = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    WeighWithinDays = table.Column<int>(type: "integer", nullable: true),
                    QualityClaimDays = table.Column<int>(type: "integer", nullable: true),
                    OtherClaimDays = table.Column<int>(type: "integer", nullable: true),
                    IsInUse = table.Column<bool>(type: "boolean", nullable: false),
                    FranchiseTenThousandths = table.Column<long>(type: "bigint", nullable: false),
                    ToleranceTenThousandths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StandardForms", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ContractLots",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    DecisionId = table.Column<Guid>(type: "uuid", nullable: true),
                    Bags = table.Column<int>(type: "integer", nullable: false),
                    ContractId = table.Column<Guid>(type: "uuid", nullable: false),
                    BagWeightMicrograms = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ContractLots", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ContractLots_Contracts_ContractId",
                        column: x => x.ContractId,
                        principalTable: "Contracts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ContractLots_Decisions_DecisionId",
                        column: x => x.DecisionId,
                        principalTable: "Decisions",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ContractLots_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ContractMoves",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Axis = table.Column<int>(type: "integer", nullable: false),
                    Move = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    From = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    To = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Reason = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    IsBreach = table.Column<bool>(type: "boolean", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    ContractId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ContractMoves", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ContractMoves_Contracts_ContractId",
                        column: x => x.ContractId,
                        principalTable: "Contracts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ContractMoves_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ContractVersions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Terms = table.Column<string>(type: "text", nullable: false),
                    Reason = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    WrittenBy = table.Column<Guid>(type: "uuid", nullable: false),
                    WrittenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    SignedOn = table.Column<DateOnly>(type: "date", nullable: true),
                    SignedForSeller = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    SignedBy = table.Column<Guid>(type: "uuid", nullable: true),
                    SignedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    ContractId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ContractVersions", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ContractVersions_Contracts_ContractId",
                        column: x => x.ContractId,
                        principalTable: "Contracts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ContractVersions_People_SignedBy",
                        column: x => x.SignedBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ContractVersions_People_WrittenBy",
                        column: x => x.WrittenBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "MonthRolls",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    From = table.Column<string>(type: "character varying(9)", maxLength: 9, nullable: false),
                    To = table.Column<string>(type: "character varying(9)", maxLength: 9, nullable: false),
                    SpreadTenThousandths = table.Column<long>(type: "bigint", nullable: false),
                    FeeTenThousandths = table.Column<long>(type: "bigint", nullable: false),
                    DifferentialTenThousandths = table.Column<long>(type: "bigint", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    ContractId = table.Column<Guid>(type: "uuid", nullable: false),
                    WeightMicrograms = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_MonthRolls", x => x.Id);
                    table.ForeignKey(
                        name: "FK_MonthRolls_Contracts_ContractId",
                        column: x => x.ContractId,
                        principalTable: "Contracts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_MonthRolls_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PriceFixings",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Month = table.Column<string>(type: "character varying(9)", maxLength: 9, nullable: false),
                    Lots = table.Column<int>(type: "integer", nullable: true),
                    LevelTenThousandths = table.Column<long>(type: "bigint", nullable: false),
                    DifferentialTenThousandths = table.Column<long>(type: "bigint", nullable: false),
                    Method = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    TakenBackBecause = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    TakenBackBy = table.Column<Guid>(type: "uuid", nullable: true),
                    TakenBackAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    ContractId = table.Column<Guid>(type: "uuid", nullable: false),
                    WeightMicrograms = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PriceFixings", x => x.Id);
                    table.ForeignKey(
                        name: "FK_PriceFixings_Contracts_ContractId",
                        column: x => x.ContractId,
                        principalTable: "Contracts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_PriceFixings_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_PriceFixings_People_TakenBackBy",
                        column: x => x.TakenBackBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "SampleApprovals",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    SampleId = table.Column<Guid>(type: "uuid", nullable: false),
                    Round = table.Column<int>(type: "integer", nullable: false),
                    Verdict = table.Column<int>(type: "integer", nullable: false),
                    Remarks = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    ContractId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SampleApprovals", x => x.Id);
                    table.ForeignKey(
                        name: "FK_SampleApprovals_Contracts_ContractId",
                        column: x => x.ContractId,
                        principalTable: "Contracts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SampleApprovals_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SampleApprovals_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SampleApprovals_Samples_SampleId",
                        column: x => x.SampleId,
                        principalTable: "Samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ShipmentContainers",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<string>(type: "character varying(11)", maxLength: 11, nullable: false),
                    SealNumber = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    ShipmentId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShipmentContainers", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ShipmentContainers_Shipments_ShipmentId",
                        column: x => x.ShipmentId,
                        principalTable: "Shipments",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ShipmentLots",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    ContractId = table.Column<Guid>(type: "uuid", nullable: false),
                    ContractLotId = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    Bags = table.Column<int>(type: "integer", nullable: false),
                    ShipmentId = table.Column<Guid>(type: "uuid", nullable: false),
                    NetMicrograms = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShipmentLots", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ShipmentLots_Contracts_ContractId",
                        column: x => x.ContractId,
                        principalTable: "Contracts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ShipmentLots_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ShipmentLots_Shipments_ShipmentId",
                        column: x => x.ShipmentId,
                        principalTable: "Shipments",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Arrivals",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    ShipmentId = table.Column<Guid>(type: "uuid", nullable: false),
                    ShipmentLotId = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    ShippedBags = table.Column<int>(type: "integer", nullable: false),
                    ReceivedOn = table.Column<DateOnly>(type: "date", nullable: false),
                    Bags = table.Column<int>(type: "integer", nullable: false),
                    WetBags = table.Column<int>(type: "integer", nullable: false),
                    TornBags = table.Column<int>(type: "integer", nullable: false),
                    StainedBags = table.Column<int>(type: "integer", nullable: false),
                    IsInfested = table.Column<bool>(type: "boolean", nullable: false),
                    Odour = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: true),
                    SealIntact = table.Column<bool>(type: "boolean", nullable: true),
                    Note = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    ApprovedSampleId = table.Column<Guid>(type: "uuid", nullable: true),
                    ArrivalSampleId = table.Column<Guid>(type: "uuid", nullable: true),
                    LandedMicrograms = table.Column<long>(type: "bigint", nullable: false),
                    ShippedMicrograms = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Arrivals", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Arrivals_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Arrivals_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Arrivals_Samples_ApprovedSampleId",
                        column: x => x.ApprovedSampleId,
                        principalTable: "Samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Arrivals_Samples_ArrivalSampleId",
                        column: x => x.ArrivalSampleId,
                        principalTable: "Samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Arrivals_ShipmentLots_ShipmentLotId",
                        column: x => x.ShipmentLotId,
                        principalTable: "ShipmentLots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Arrivals_Shipments_ShipmentId",
                        column: x => x.ShipmentId,
                        principalTable: "Shipments",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_SampleRoasts_WithdrawnBy",
                table: "SampleRoasts",
                column: "WithdrawnBy");

            migrationBuilder.CreateIndex(
                name: "IX_GreenGrades_WithdrawnBy",
                table: "GreenGrades",
                column: "WithdrawnBy");

            migrationBuilder.CreateIndex(
                name: "IX_DiscussedScores_WithdrawnBy",
                table: "DiscussedScores",
                column: "WithdrawnBy");

            migrationBuilder.CreateIndex(
                name: "IX_Arrivals_ApprovedSampleId",
                table: "Arrivals",
                column: "ApprovedSampleId");

            migrationBuilder.CreateIndex(
                name: "IX_Arrivals_ArrivalSampleId",
                table: "Arrivals",
                column: "ArrivalSampleId");

            migrationBuilder.CreateIndex(
                name: "IX_Arrivals_By",
                table: "Arrivals",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_Arrivals_LotId",
                table: "Arrivals",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_Arrivals_ReceivedOn",
                table: "Arrivals",
                column: "ReceivedOn");

            migrationBuilder.CreateIndex(
                name: "IX_Arrivals_ShipmentId",
                table: "Arrivals",
                column: "ShipmentId");

            migrationBuilder.CreateIndex(
                name: "IX_Arrivals_ShipmentLotId",
                table: "Arrivals",
                column: "ShipmentLotId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ContractLots_ContractId",
                table: "ContractLots",
                column: "ContractId");

            migrationBuilder.CreateIndex(
                name: "IX_ContractLots_DecisionId",
                table: "ContractLots",
                column: "DecisionId");

            migrationBuilder.CreateIndex(
                name: "IX_ContractLots_LotId",
                table: "ContractLots",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_ContractMoves_By",
                table: "ContractMoves",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_ContractMoves_ContractId_Number",
                table: "ContractMoves",
                columns: new[] { "ContractId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Contracts_OpenMonth",
                table: "Contracts",
                column: "OpenMonth");

            migrationBuilder.CreateIndex(
                name: "IX_Contracts_Ref",
                table: "Contracts",
                column: "Ref",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Contracts_SupplierId",
                table: "Contracts",
                column: "SupplierId");

            migrationBuilder.CreateIndex(
                name: "IX_ContractVersions_ContractId_Number",
                table: "ContractVersions",
                columns: new[] { "ContractId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ContractVersions_SignedBy",
                table: "ContractVersions",
                column: "SignedBy");

            migrationBuilder.CreateIndex(
                name: "IX_ContractVersions_WrittenBy",
                table: "ContractVersions",
                column: "WrittenBy");

            migrationBuilder.CreateIndex(
                name: "IX_ExchangeHolidays_Market_On",
                table: "ExchangeHolidays",
                columns: new[] { "Market", "On" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_MonthRolls_By",
                table: "MonthRolls",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_MonthRolls_ContractId_Number",
                table: "MonthRolls",
                columns: new[] { "ContractId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_PriceFixings_By",
                table: "PriceFixings",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_PriceFixings_ContractId_Number",
                table: "PriceFixings",
                columns: new[] { "ContractId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_PriceFixings_TakenBackBy",
                table: "PriceFixings",
                column: "TakenBackBy");

            migrationBuilder.CreateIndex(
                name: "IX_SampleApprovals_By",
                table: "SampleApprovals",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_SampleApprovals_ContractId_LotId_Round",
                table: "SampleApprovals",
                columns: new[] { "ContractId", "LotId", "Round" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_SampleApprovals_LotId",
                table: "SampleApprovals",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_SampleApprovals_SampleId",
                table: "SampleApprovals",
                column: "SampleId");

            migrationBuilder.CreateIndex(
                name: "IX_ShipmentContainers_ShipmentId_Number",
                table: "ShipmentContainers",
                columns: new[] { "ShipmentId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ShipmentLots_ContractId",
                table: "ShipmentLots",
                column: "ContractId");

            migrationBuilder.CreateIndex(
                name: "IX_ShipmentLots_ContractLotId",
                table: "ShipmentLots",
                column: "ContractLotId");

            migrationBuilder.CreateIndex(
                name: "IX_ShipmentLots_LotId",
                table: "ShipmentLots",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_ShipmentLots_ShipmentId",
                table: "ShipmentLots",
                column: "ShipmentId");

            migrationBuilder.CreateIndex(
                name: "IX_Shipments_Ref",
                table: "Shipments",
                column: "Ref",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_StandardForms_Name_Edition",
                table: "StandardForms",
                columns: new[] { "Name", "Edition" },
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "FK_DiscussedScores_People_WithdrawnBy",
                table: "DiscussedScores",
                column: "WithdrawnBy",
                principalTable: "People",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "FK_GreenGrades_People_WithdrawnBy",
                table: "GreenGrades",
                column: "WithdrawnBy",
                principalTable: "People",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "FK_SampleRoasts_People_WithdrawnBy",
                table: "SampleRoasts",
                column: "WithdrawnBy",
                principalTable: "People",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "FK_DiscussedScores_People_WithdrawnBy",
                table: "DiscussedScores");

            migrationBuilder.DropForeignKey(
                name: "FK_GreenGrades_People_WithdrawnBy",
                table: "GreenGrades");

            migrationBuilder.DropForeignKey(
                name: "FK_SampleRoasts_People_WithdrawnBy",
                table: "SampleRoasts");

            migrationBuilder.DropTable(
                name: "ArrivalHabits");

            migrationBuilder.DropTable(
                name: "Arrivals");

            migrationBuilder.DropTable(
                name: "ContractLots");

            migrationBuilder.DropTable(
                name: "ContractMoves");

            migrationBuilder.DropTable(
                name: "ContractVersions");

            migrationBuilder.DropTable(
                name: "ExchangeHolidays");

            migrationBuilder.DropTable(
                name: "FixingHabits");

            migrationBuilder.DropTable(
                name: "MonthRolls");

            migrationBuilder.DropTable(
                name: "PriceFixings");

            migrationBuilder.DropTable(
                name: "SampleApprovals");

            migrationBuilder.DropTable(
                name: "ShipmentContainers");

            migrationBuilder.DropTable(
                name: "StandardForms");

            migrationBuilder.DropTable(
                name: "ShipmentLots");

            migrationBuilder.DropTable(
                name: "Contracts");

            migrationBuilder.DropTable(
                name: "Shipments");

            migrationBuilder.DropIndex(
                name: "IX_SampleRoasts_WithdrawnBy",
                table: "SampleRoasts");

            migrationBuilder.DropIndex(
                name: "IX_GreenGrades_WithdrawnBy",
                table: "GreenGrades");

            migrationBuilder.DropIndex(
                name: "IX_DiscussedScores_WithdrawnBy",
                table: "DiscussedScores");

            migrationBuilder.DropColumn(
                name: "WithdrawnAt",
                table: "SampleRoasts");

            migrationBuilder.DropColumn(
                name: "WithdrawnBecause",
                table: "SampleRoasts");

            migrationBuilder.DropColumn(
                name: "WithdrawnBy",
                table: "SampleRoasts");

            migrationBuilder.DropColumn(
                name: "Found",
                table: "Jobs");

            migrationBuilder.DropColumn(
                name: "TimeZone",
                table: "Houses");

            migrationBuilder.DropColumn(
                name: "WithdrawnAt",
                table: "GreenGrades");

            migrationBuilder.DropColumn(
                name: "WithdrawnBecause",
                table: "GreenGrades");

            migrationBuilder.DropColumn(
                name: "WithdrawnBy",
                table: "GreenGrades");

            migrationBuilder.DropColumn(
                name: "WithdrawnAt",
                table: "DiscussedScores");

            migrationBuilder.DropColumn(
                name: "WithdrawnBecause",
                table: "DiscussedScores");

            migrationBuilder.DropColumn(
                name: "WithdrawnBy",
                table: "DiscussedScores");

            migrationBuilder.DropColumn(
                name: "IsRetired",
                table: "Descriptors");

            migrationBuilder.DropColumn(
                name: "Version",
                table: "Descriptors");

            migrationBuilder.DropColumn(
                name: "Reason",
                table: "DescriptiveForms");

            migrationBuilder.DropColumn(
                name: "StatedRepeatabilityMillionths",
                table: "CuppingHabits");
        }
    }
}
