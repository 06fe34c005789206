using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class ArrivalToStock : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<bool>(
                name: "QualityFromClearance",
                table: "StandardForms",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<DateOnly>(
                name: "BoardedOn",
                table: "ShipmentLots",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "IsUnapproved",
                table: "ShipmentLots",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<DateTime>(
                name: "LeftAt",
                table: "Samples",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "LeftBecause",
                table: "Samples",
                type: "TEXT",
                maxLength: 500,
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "LeftBy",
                table: "Samples",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "LeftMicrograms",
                table: "Samples",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Programme",
                table: "Lots",
                type: "TEXT",
                maxLength: 80,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Cups",
                table: "EarlierSheets",
                type: "TEXT",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<string>(
                name: "DefectName",
                table: "EarlierSheets",
                type: "TEXT",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Description",
                table: "EarlierSheets",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "StatedTotalMillionths",
                table: "EarlierSheets",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "IsLowRisk",
                table: "Countries",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<int>(
                name: "Corrections",
                table: "Arrivals",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<long>(
                name: "HumidityTenThousandths",
                table: "Arrivals",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "InfestedBags",
                table: "Arrivals",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "OdourBags",
                table: "Arrivals",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "TenthsOfCelsius",
                table: "Arrivals",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "HighestMoistureTenThousandths",
                table: "ArrivalHabits",
                type: "INTEGER",
                nullable: false,
                defaultValue: 125000L);

            migrationBuilder.AddColumn<long>(
                name: "LeastOnStatedScreenTenThousandths",
                table: "ArrivalHabits",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "LowestMoistureTenThousandths",
                table: "ArrivalHabits",
                type: "INTEGER",
                nullable: false,
                defaultValue: 80000L);

            migrationBuilder.AddColumn<int>(
                name: "WaterActivityBelowTenThousandths",
                table: "ArrivalHabits",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "CalendarFeeds",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    MadeAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    LastReadAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    RevokedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CalendarFeeds", x => x.Id);
                    table.ForeignKey(
                        name: "FK_CalendarFeeds_People_OwnerId",
                        column: x => x.OwnerId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Claims",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    Ref = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    ArrivalId = table.Column<Guid>(type: "TEXT", nullable: false),
                    ContractId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LotId = table.Column<Guid>(type: "TEXT", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Case = table.Column<string>(type: "TEXT", nullable: false),
                    LastDay = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    IsLate = table.Column<bool>(type: "INTEGER", nullable: false),
                    LateReason = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: true),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Outcome = table.Column<int>(type: "INTEGER", nullable: true),
                    SettledOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    NoteCount = table.Column<int>(type: "INTEGER", nullable: false),
                    SearchText = table.Column<string>(type: "TEXT", nullable: false),
                    AmountCurrency = table.Column<string>(type: "TEXT", maxLength: 3, nullable: true),
                    AmountMinorUnits = table.Column<long>(type: "INTEGER", nullable: true),
                    SettledCurrency = table.Column<string>(type: "TEXT", maxLength: 3, nullable: true),
                    SettledMinorUnits = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Claims", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Claims_Arrivals_ArrivalId",
                        column: x => x.ArrivalId,
                        principalTable: "Arrivals",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Claims_Contracts_ContractId",
                        column: x => x.ContractId,
                        principalTable: "Contracts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Claims_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Claims_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "DocumentRules",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    Incoterms = table.Column<string>(type: "TEXT", nullable: false),
                    Origins = table.Column<string>(type: "TEXT", nullable: false),
                    Destinations = table.Column<string>(type: "TEXT", nullable: false),
                    Certificate = table.Column<string>(type: "TEXT", maxLength: 40, nullable: true),
                    Note = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true),
                    IsInUse = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DocumentRules", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DueDiligences",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    LotId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Role = table.Column<int>(type: "INTEGER", nullable: false),
                    ProducedFrom = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    ProducedUntil = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Legality = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    Deforestation = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    Risk = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    StatementReference = table.Column<string>(type: "TEXT", maxLength: 14, nullable: true),
                    VerificationNumber = table.Column<string>(type: "TEXT", maxLength: 35, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DueDiligences", x => x.Id);
                    table.ForeignKey(
                        name: "FK_DueDiligences_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "DueHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    DocumentDays = table.Column<int>(type: "INTEGER", nullable: false),
                    ReceiptDays = table.Column<int>(type: "INTEGER", nullable: false),
                    CuppingDays = table.Column<int>(type: "INTEGER", nullable: false),
                    NoticeDays = table.Column<int>(type: "INTEGER", nullable: false),
                    MailHour = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DueHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DueMails",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    EndedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Trouble = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true),
                    LastDay = table.Column<DateOnly>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DueMails", x => x.Id);
                    table.ForeignKey(
                        name: "FK_DueMails_People_OwnerId",
                        column: x => x.OwnerId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "EarlierReceipts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Was = table.Column<string>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    ArrivalId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_EarlierReceipts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_EarlierReceipts_Arrivals_ArrivalId",
                        column: x => x.ArrivalId,
                        principalTable: "Arrivals",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_EarlierReceipts_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "LimitsRevisions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Code = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Revision = table.Column<int>(type: "INTEGER", nullable: false),
                    Limits = table.Column<string>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LimitsRevisions", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Messages",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    Purpose = table.Column<int>(type: "INTEGER", nullable: false),
                    MessageId = table.Column<string>(type: "TEXT", maxLength: 300, nullable: false),
                    Address = table.Column<string>(type: "TEXT", maxLength: 320, nullable: false),
                    Subject = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Bytes = table.Column<byte[]>(type: "BLOB", nullable: false),
                    AboutId = table.Column<Guid>(type: "TEXT", nullable: true),
                    SubmissionId = table.Column<Guid>(type: "TEXT", nullable: true),
                    OwnerId = table.Column<Guid>(type: "TEXT", nullable: true),
                    ForDay = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    By = table.Column<Guid>(type: "TEXT", nullable: true),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    State = table.Column<int>(type: "INTEGER", nullable: false),
                    Tries = table.Column<int>(type: "INTEGER", nullable: false),
                    NextTryAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    TakenBy = table.Column<string>(type: "TEXT", maxLength: 200, nullable: true),
                    TakenAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    TextAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    EndedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Trouble = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true),
                    AskedAgainBy = table.Column<Guid>(type: "TEXT", nullable: true),
                    AskedAgainAt = table.Column<DateTime>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Messages", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Messages_People_AskedAgainBy",
                        column: x => x.AskedAgainBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Messages_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Messages_People_OwnerId",
                        column: x => x.OwnerId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Plots",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    ProducerId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    CountryCode = table.Column<string>(type: "TEXT", maxLength: 2, nullable: false),
                    Shape = table.Column<string>(type: "TEXT", nullable: false),
                    IsPoint = table.Column<bool>(type: "INTEGER", nullable: false),
                    AreaSquareDecimetres = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Plots", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Plots_Producers_ProducerId",
                        column: x => x.ProducerId,
                        principalTable: "Producers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Purposes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    SearchText = table.Column<string>(type: "TEXT", nullable: false),
                    Process = table.Column<int>(type: "INTEGER", nullable: true),
                    Flavour = table.Column<string>(type: "TEXT", maxLength: 60, nullable: true),
                    Blend = table.Column<string>(type: "TEXT", maxLength: 80, nullable: true),
                    IsInUse = table.Column<bool>(type: "INTEGER", nullable: false),
                    LeastScoreMillionths = table.Column<long>(type: "INTEGER", nullable: true),
                    ShareTenThousandths = table.Column<long>(type: "INTEGER", nullable: true),
                    WeeklyUseMicrograms = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Purposes", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "QualityBands",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    FormId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Bands = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_QualityBands", x => x.Id);
                    table.ForeignKey(
                        name: "FK_QualityBands_CuppingForms_FormId",
                        column: x => x.FormId,
                        principalTable: "CuppingForms",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "RecordHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    LeastNumber = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RecordHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SchemeRevisions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Code = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    Revision = table.Column<int>(type: "INTEGER", nullable: false),
                    Scheme = table.Column<string>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SchemeRevisions", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "StockHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    CountNeedsSecondPerson = table.Column<bool>(type: "INTEGER", nullable: false),
                    UseWeeks = table.Column<int>(type: "INTEGER", nullable: false),
                    LeadDays = table.Column<int>(type: "INTEGER", nullable: false),
                    LeadSpreadDays = table.Column<int>(type: "INTEGER", nullable: false),
                    SafetyThousandths = table.Column<int>(type: "INTEGER", nullable: false),
                    WayDays = table.Column<int>(type: "INTEGER", nullable: false),
                    ShipsAfterMonths = table.Column<int>(type: "INTEGER", nullable: false),
                    ShipsUntilMonths = table.Column<int>(type: "INTEGER", nullable: false),
                    DoseMicrograms = table.Column<long>(type: "INTEGER", nullable: false),
                    RoastLossTenThousandths = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StockHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SupplierContacts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    SupplierId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Email = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Language = table.Column<string>(type: "TEXT", maxLength: 2, nullable: false),
                    Receives = table.Column<int>(type: "INTEGER", nullable: false),
                    IsActive = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SupplierContacts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_SupplierContacts_Suppliers_SupplierId",
                        column: x => x.SupplierId,
                        principalTable: "Suppliers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Warehouses",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    SearchText = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Warehouses", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ClaimNotes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Side = table.Column<int>(type: "INTEGER", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Text = table.Column<string>(type: "TEXT", maxLength: 4000, nullable: false),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    ClaimId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ClaimNotes", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ClaimNotes_Claims_ClaimId",
                        column: x => x.ClaimId,
                        principalTable: "Claims",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ClaimNotes_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ClaimSettlements",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Outcome = table.Column<int>(type: "INTEGER", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Words = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    TakenBackBecause = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: true),
                    TakenBackBy = table.Column<Guid>(type: "TEXT", nullable: true),
                    TakenBackAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    ClaimId = table.Column<Guid>(type: "TEXT", nullable: false),
                    AmountCurrency = table.Column<string>(type: "TEXT", maxLength: 3, nullable: true),
                    AmountMinorUnits = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ClaimSettlements", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ClaimSettlements_Claims_ClaimId",
                        column: x => x.ClaimId,
                        principalTable: "Claims",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ClaimSettlements_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ClaimSettlements_People_TakenBackBy",
                        column: x => x.TakenBackBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "CostPostings",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    ContractId = table.Column<Guid>(type: "TEXT", nullable: true),
                    ShipmentId = table.Column<Guid>(type: "TEXT", nullable: true),
                    LotId = table.Column<Guid>(type: "TEXT", nullable: true),
                    ClaimId = table.Column<Guid>(type: "TEXT", nullable: true),
                    Stage = table.Column<int>(type: "INTEGER", nullable: true),
                    RateOn = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Document = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    From = table.Column<string>(type: "TEXT", maxLength: 120, nullable: true),
                    Basis = table.Column<int>(type: "INTEGER", nullable: false),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    WithdrawnBecause = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true),
                    WithdrawnBy = table.Column<Guid>(type: "TEXT", nullable: true),
                    WithdrawnAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    AmountCurrency = table.Column<string>(type: "TEXT", maxLength: 3, nullable: false),
                    AmountMinorUnits = table.Column<long>(type: "INTEGER", nullable: false),
                    HouseCurrency = table.Column<string>(type: "TEXT", maxLength: 3, nullable: false),
                    HouseMinorUnits = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CostPostings", x => x.Id);
                    table.ForeignKey(
                        name: "FK_CostPostings_Claims_ClaimId",
                        column: x => x.ClaimId,
                        principalTable: "Claims",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CostPostings_Contracts_ContractId",
                        column: x => x.ContractId,
                        principalTable: "Contracts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CostPostings_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CostPostings_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CostPostings_People_WithdrawnBy",
                        column: x => x.WithdrawnBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CostPostings_Shipments_ShipmentId",
                        column: x => x.ShipmentId,
                        principalTable: "Shipments",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ShipmentDocuments",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    RuleId = table.Column<Guid>(type: "TEXT", nullable: true),
                    State = table.Column<int>(type: "INTEGER", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 300, nullable: true),
                    AttachmentId = table.Column<Guid>(type: "TEXT", nullable: true),
                    ShipmentId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShipmentDocuments", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ShipmentDocuments_Attachments_AttachmentId",
                        column: x => x.AttachmentId,
                        principalTable: "Attachments",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ShipmentDocuments_DocumentRules_RuleId",
                        column: x => x.RuleId,
                        principalTable: "DocumentRules",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ShipmentDocuments_Shipments_ShipmentId",
                        column: x => x.ShipmentId,
                        principalTable: "Shipments",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "LotPlots",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    PlotId = table.Column<Guid>(type: "TEXT", nullable: false),
                    DueDiligenceId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LotPlots", x => x.Id);
                    table.ForeignKey(
                        name: "FK_LotPlots_DueDiligences_DueDiligenceId",
                        column: x => x.DueDiligenceId,
                        principalTable: "DueDiligences",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_LotPlots_Plots_PlotId",
                        column: x => x.PlotId,
                        principalTable: "Plots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PurposeLots",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    LotId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PurposeId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PurposeLots", x => x.Id);
                    table.ForeignKey(
                        name: "FK_PurposeLots_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_PurposeLots_Purposes_PurposeId",
                        column: x => x.PurposeId,
                        principalTable: "Purposes",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ValuationChoices",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Method = table.Column<int>(type: "INTEGER", nullable: false),
                    From = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    StockHabitsId = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ValuationChoices", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ValuationChoices_StockHabits_StockHabitsId",
                        column: x => x.StockHabitsId,
                        principalTable: "StockHabits",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Holdings",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    LotId = table.Column<Guid>(type: "TEXT", nullable: false),
                    WarehouseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Bags = table.Column<int>(type: "INTEGER", nullable: false),
                    PackedMicrograms = table.Column<long>(type: "INTEGER", nullable: false),
                    ReservedMicrograms = table.Column<long>(type: "INTEGER", nullable: false),
                    WeighedMicrograms = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Holdings", x => x.Id);
                    table.CheckConstraint("CK_Holdings_NotBelowZero", "\"Bags\" >= 0 AND \"PackedMicrograms\" >= 0 AND \"WeighedMicrograms\" >= 0 AND \"ReservedMicrograms\" >= 0");
                    table.ForeignKey(
                        name: "FK_Holdings_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Holdings_Warehouses_WarehouseId",
                        column: x => x.WarehouseId,
                        principalTable: "Warehouses",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "StockCounts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    WarehouseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    ApprovedBy = table.Column<Guid>(type: "TEXT", nullable: true),
                    ApprovedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    DroppedBecause = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true),
                    Counters = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StockCounts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_StockCounts_People_ApprovedBy",
                        column: x => x.ApprovedBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_StockCounts_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_StockCounts_Warehouses_WarehouseId",
                        column: x => x.WarehouseId,
                        principalTable: "Warehouses",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Movements",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HoldingId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LotId = table.Column<Guid>(type: "TEXT", nullable: false),
                    WarehouseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    Bags = table.Column<int>(type: "INTEGER", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    Document = table.Column<string>(type: "TEXT", maxLength: 80, nullable: true),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    ArrivalId = table.Column<Guid>(type: "TEXT", nullable: true),
                    PurposeId = table.Column<Guid>(type: "TEXT", nullable: true),
                    TransferId = table.Column<Guid>(type: "TEXT", nullable: true),
                    ReversesId = table.Column<Guid>(type: "TEXT", nullable: true),
                    PackedMicrograms = table.Column<long>(type: "INTEGER", nullable: false),
                    WeighedMicrograms = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Movements", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Movements_Arrivals_ArrivalId",
                        column: x => x.ArrivalId,
                        principalTable: "Arrivals",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Movements_Holdings_HoldingId",
                        column: x => x.HoldingId,
                        principalTable: "Holdings",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Movements_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Movements_Movements_ReversesId",
                        column: x => x.ReversesId,
                        principalTable: "Movements",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Movements_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Movements_Purposes_PurposeId",
                        column: x => x.PurposeId,
                        principalTable: "Purposes",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Movements_Warehouses_WarehouseId",
                        column: x => x.WarehouseId,
                        principalTable: "Warehouses",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Reservations",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    HoldingId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Use = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    PurposeId = table.Column<Guid>(type: "TEXT", nullable: true),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    EndedBy = table.Column<Guid>(type: "TEXT", nullable: true),
                    EndedAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    WeightMicrograms = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Reservations", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Reservations_Holdings_HoldingId",
                        column: x => x.HoldingId,
                        principalTable: "Holdings",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Reservations_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Reservations_People_EndedBy",
                        column: x => x.EndedBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Reservations_Purposes_PurposeId",
                        column: x => x.PurposeId,
                        principalTable: "Purposes",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "CountLines",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    HoldingId = table.Column<Guid>(type: "TEXT", nullable: false),
                    BookBags = table.Column<int>(type: "INTEGER", nullable: false),
                    CountedBags = table.Column<int>(type: "INTEGER", nullable: true),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 300, nullable: true),
                    CountedBy = table.Column<Guid>(type: "TEXT", nullable: true),
                    StockCountId = table.Column<Guid>(type: "TEXT", nullable: false),
                    BookMicrograms = table.Column<long>(type: "INTEGER", nullable: false),
                    CountedMicrograms = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CountLines", x => x.Id);
                    table.ForeignKey(
                        name: "FK_CountLines_Holdings_HoldingId",
                        column: x => x.HoldingId,
                        principalTable: "Holdings",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CountLines_People_CountedBy",
                        column: x => x.CountedBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CountLines_StockCounts_StockCountId",
                        column: x => x.StockCountId,
                        principalTable: "StockCounts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Samples_LeftBy",
                table: "Samples",
                column: "LeftBy");

            migrationBuilder.CreateIndex(
                name: "IX_CalendarFeeds_Hash",
                table: "CalendarFeeds",
                column: "Hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_CalendarFeeds_OwnerId",
                table: "CalendarFeeds",
                column: "OwnerId");

            migrationBuilder.CreateIndex(
                name: "IX_ClaimNotes_By",
                table: "ClaimNotes",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_ClaimNotes_ClaimId_Number",
                table: "ClaimNotes",
                columns: new[] { "ClaimId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Claims_ArrivalId",
                table: "Claims",
                column: "ArrivalId");

            migrationBuilder.CreateIndex(
                name: "IX_Claims_By",
                table: "Claims",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_Claims_ContractId",
                table: "Claims",
                column: "ContractId");

            migrationBuilder.CreateIndex(
                name: "IX_Claims_LotId",
                table: "Claims",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_Claims_Ref",
                table: "Claims",
                column: "Ref",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ClaimSettlements_By",
                table: "ClaimSettlements",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_ClaimSettlements_ClaimId_Number",
                table: "ClaimSettlements",
                columns: new[] { "ClaimId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ClaimSettlements_TakenBackBy",
                table: "ClaimSettlements",
                column: "TakenBackBy");

            migrationBuilder.CreateIndex(
                name: "IX_CostPostings_By",
                table: "CostPostings",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_CostPostings_ClaimId",
                table: "CostPostings",
                column: "ClaimId");

            migrationBuilder.CreateIndex(
                name: "IX_CostPostings_ContractId",
                table: "CostPostings",
                column: "ContractId");

            migrationBuilder.CreateIndex(
                name: "IX_CostPostings_LotId",
                table: "CostPostings",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_CostPostings_On",
                table: "CostPostings",
                column: "On");

            migrationBuilder.CreateIndex(
                name: "IX_CostPostings_ShipmentId",
                table: "CostPostings",
                column: "ShipmentId");

            migrationBuilder.CreateIndex(
                name: "IX_CostPostings_WithdrawnBy",
                table: "CostPostings",
                column: "WithdrawnBy");

            migrationBuilder.CreateIndex(
                name: "IX_CountLines_CountedBy",
                table: "CountLines",
                column: "CountedBy");

            migrationBuilder.CreateIndex(
                name: "IX_CountLines_HoldingId",
                table: "CountLines",
                column: "HoldingId");

            migrationBuilder.CreateIndex(
                name: "IX_CountLines_StockCountId",
                table: "CountLines",
                column: "StockCountId");

            migrationBuilder.CreateIndex(
                name: "IX_DueDiligences_LotId",
                table: "DueDiligences",
                column: "LotId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_DueMails_OwnerId",
                table: "DueMails",
                column: "OwnerId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_EarlierReceipts_ArrivalId_Number",
                table: "EarlierReceipts",
                columns: new[] { "ArrivalId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_EarlierReceipts_By",
                table: "EarlierReceipts",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_Holdings_LotId_WarehouseId",
                table: "Holdings",
                columns: new[] { "LotId", "WarehouseId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Holdings_WarehouseId",
                table: "Holdings",
                column: "WarehouseId");

            migrationBuilder.CreateIndex(
                name: "IX_LimitsRevisions_Code_Revision",
                table: "LimitsRevisions",
                columns: new[] { "Code", "Revision" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_LotPlots_DueDiligenceId_PlotId",
                table: "LotPlots",
                columns: new[] { "DueDiligenceId", "PlotId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_LotPlots_PlotId",
                table: "LotPlots",
                column: "PlotId");

            migrationBuilder.CreateIndex(
                name: "IX_Messages_AboutId",
                table: "Messages",
                column: "AboutId");

            migrationBuilder.CreateIndex(
                name: "IX_Messages_AskedAgainBy",
                table: "Messages",
                column: "AskedAgainBy");

            migrationBuilder.CreateIndex(
                name: "IX_Messages_By",
                table: "Messages",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_Messages_MessageId",
                table: "Messages",
                column: "MessageId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Messages_OwnerId",
                table: "Messages",
                column: "OwnerId");

            migrationBuilder.CreateIndex(
                name: "IX_Messages_State_NextTryAt",
                table: "Messages",
                columns: new[] { "State", "NextTryAt" });

            migrationBuilder.CreateIndex(
                name: "IX_Messages_SubmissionId_Address",
                table: "Messages",
                columns: new[] { "SubmissionId", "Address" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Movements_ArrivalId",
                table: "Movements",
                column: "ArrivalId");

            migrationBuilder.CreateIndex(
                name: "IX_Movements_By",
                table: "Movements",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_Movements_HoldingId_On",
                table: "Movements",
                columns: new[] { "HoldingId", "On" });

            migrationBuilder.CreateIndex(
                name: "IX_Movements_LotId",
                table: "Movements",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_Movements_On",
                table: "Movements",
                column: "On");

            migrationBuilder.CreateIndex(
                name: "IX_Movements_PurposeId",
                table: "Movements",
                column: "PurposeId");

            migrationBuilder.CreateIndex(
                name: "IX_Movements_ReversesId",
                table: "Movements",
                column: "ReversesId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Movements_WarehouseId",
                table: "Movements",
                column: "WarehouseId");

            migrationBuilder.CreateIndex(
                name: "IX_Plots_ProducerId",
                table: "Plots",
                column: "ProducerId");

            migrationBuilder.CreateIndex(
                name: "IX_PurposeLots_LotId",
                table: "PurposeLots",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_PurposeLots_PurposeId_LotId",
                table: "PurposeLots",
                columns: new[] { "PurposeId", "LotId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Purposes_SearchText",
                table: "Purposes",
                column: "SearchText",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_QualityBands_FormId",
                table: "QualityBands",
                column: "FormId");

            migrationBuilder.CreateIndex(
                name: "IX_Reservations_By",
                table: "Reservations",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_Reservations_EndedBy",
                table: "Reservations",
                column: "EndedBy");

            migrationBuilder.CreateIndex(
                name: "IX_Reservations_HoldingId",
                table: "Reservations",
                column: "HoldingId");

            migrationBuilder.CreateIndex(
                name: "IX_Reservations_PurposeId",
                table: "Reservations",
                column: "PurposeId");

            migrationBuilder.CreateIndex(
                name: "IX_SchemeRevisions_Code_Revision",
                table: "SchemeRevisions",
                columns: new[] { "Code", "Revision" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ShipmentDocuments_AttachmentId",
                table: "ShipmentDocuments",
                column: "AttachmentId");

            migrationBuilder.CreateIndex(
                name: "IX_ShipmentDocuments_RuleId",
                table: "ShipmentDocuments",
                column: "RuleId");

            migrationBuilder.CreateIndex(
                name: "IX_ShipmentDocuments_ShipmentId_Name",
                table: "ShipmentDocuments",
                columns: new[] { "ShipmentId", "Name" });

            migrationBuilder.CreateIndex(
                name: "IX_StockCounts_ApprovedBy",
                table: "StockCounts",
                column: "ApprovedBy");

            migrationBuilder.CreateIndex(
                name: "IX_StockCounts_By",
                table: "StockCounts",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_StockCounts_WarehouseId",
                table: "StockCounts",
                column: "WarehouseId");

            migrationBuilder.CreateIndex(
                name: "IX_SupplierContacts_SupplierId_Email",
                table: "SupplierContacts",
                columns: new[] { "SupplierId", "Email" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ValuationChoices_StockHabitsId",
                table: "ValuationChoices",
                column: "StockHabitsId");

            migrationBuilder.CreateIndex(
                name: "IX_Warehouses_SearchText",
                table: "Warehouses",
                column: "SearchText",
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "FK_Samples_People_LeftBy",
                table: "Samples",
                column: "LeftBy",
                principalTable: "People",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "FK_Samples_People_LeftBy",
                table: "Samples");

            migrationBuilder.DropTable(
                name: "CalendarFeeds");

            migrationBuilder.DropTable(
                name: "ClaimNotes");

            migrationBuilder.DropTable(
                name: "ClaimSettlements");

            migrationBuilder.DropTable(
                name: "CostPostings");

            migrationBuilder.DropTable(
                name: "CountLines");

            migrationBuilder.DropTable(
                name: "DueHabits");

            migrationBuilder.DropTable(
                name: "DueMails");

            migrationBuilder.DropTable(
                name: "EarlierReceipts");

            migrationBuilder.DropTable(
                name: "LimitsRevisions");

            migrationBuilder.DropTable(
                name: "LotPlots");

            migrationBuilder.DropTable(
                name: "Messages");

            migrationBuilder.DropTable(
                name: "Movements");

            migrationBuilder.DropTable(
                name: "PurposeLots");

            migrationBuilder.DropTable(
                name: "QualityBands");

            migrationBuilder.DropTable(
                name: "RecordHabits");

            migrationBuilder.DropTable(
                name: "Reservations");

            migrationBuilder.DropTable(
                name: "SchemeRevisions");

            migrationBuilder.DropTable(
                name: "ShipmentDocuments");

            migrationBuilder.DropTable(
                name: "SupplierContacts");

            migrationBuilder.DropTable(
                name: "ValuationChoices");

            migrationBuilder.DropTable(
                name: "Claims");

            migrationBuilder.DropTable(
                name: "StockCounts");

            migrationBuilder.DropTable(
                name: "DueDiligences");

            migrationBuilder.DropTable(
                name: "Plots");

            migrationBuilder.DropTable(
                name: "Holdings");

            migrationBuilder.DropTable(
                name: "Purposes");

            migrationBuilder.DropTable(
                name: "DocumentRules");

            migrationBuilder.DropTable(
                name: "StockHabits");

            migrationBuilder.DropTable(
                name: "Warehouses");

            migrationBuilder.DropIndex(
                name: "IX_Samples_LeftBy",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "QualityFromClearance",
                table: "StandardForms");

            migrationBuilder.DropColumn(
                name: "BoardedOn",
                table: "ShipmentLots");

            migrationBuilder.DropColumn(
                name: "IsUnapproved",
                table: "ShipmentLots");

            migrationBuilder.DropColumn(
                name: "LeftAt",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "LeftBecause",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "LeftBy",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "LeftMicrograms",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "Programme",
                table: "Lots");

            migrationBuilder.DropColumn(
                name: "Cups",
                table: "EarlierSheets");

            migrationBuilder.DropColumn(
                name: "DefectName",
                table: "EarlierSheets");

            migrationBuilder.DropColumn(
                name: "Description",
                table: "EarlierSheets");

            migrationBuilder.DropColumn(
                name: "StatedTotalMillionths",
                table: "EarlierSheets");

            migrationBuilder.DropColumn(
                name: "IsLowRisk",
                table: "Countries");

            migrationBuilder.DropColumn(
                name: "Corrections",
                table: "Arrivals");

            migrationBuilder.DropColumn(
                name: "HumidityTenThousandths",
                table: "Arrivals");

            migrationBuilder.DropColumn(
                name: "InfestedBags",
                table: "Arrivals");

            migrationBuilder.DropColumn(
                name: "OdourBags",
                table: "Arrivals");

            migrationBuilder.DropColumn(
                name: "TenthsOfCelsius",
                table: "Arrivals");

            migrationBuilder.DropColumn(
                name: "HighestMoistureTenThousandths",
                table: "ArrivalHabits");

            migrationBuilder.DropColumn(
                name: "LeastOnStatedScreenTenThousandths",
                table: "ArrivalHabits");

            migrationBuilder.DropColumn(
                name: "LowestMoistureTenThousandths",
                table: "ArrivalHabits");

            migrationBuilder.DropColumn(
                name: "WaterActivityBelowTenThousandths",
                table: "ArrivalHabits");
        }
    }
}
