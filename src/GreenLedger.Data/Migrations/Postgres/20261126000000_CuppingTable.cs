using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class CuppingTable : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropPrimaryKey(
                name: "PK_SessionSamples",
                table: "SessionSamples");

            migrationBuilder.DropIndex(
                name: "IX_ScoreSheets_SessionId_SampleId_CupperId",
                table: "ScoreSheets");

            migrationBuilder.AddColumn<int>(
                name: "Repeat",
                table: "SessionSamples",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "Flight",
                table: "SessionSamples",
                type: "integer",
                nullable: false,
                defaultValue: 1);

            migrationBuilder.AddColumn<bool>(
                name: "IsReference",
                table: "SessionSamples",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<string[]>(
                name: "Cups",
                table: "ScoreSheets",
                type: "text[]",
                nullable: false,
                defaultValue: new string[0]);

            migrationBuilder.AddColumn<string>(
                name: "DefectName",
                table: "ScoreSheets",
                type: "character varying(60)",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Description",
                table: "ScoreSheets",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "IsReopened",
                table: "ScoreSheets",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<int>(
                name: "Repeat",
                table: "ScoreSheets",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AlterColumn<long>(
                name: "WeightMicrograms",
                table: "Samples",
                type: "bigint",
                nullable: true,
                oldClrType: typeof(long),
                oldType: "bigint");

            migrationBuilder.AlterColumn<DateOnly>(
                name: "ReceivedOn",
                table: "Samples",
                type: "date",
                nullable: true,
                oldClrType: typeof(DateOnly),
                oldType: "date");

            migrationBuilder.AddColumn<Guid>(
                name: "AskedBy",
                table: "Samples",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "AskedOf",
                table: "Samples",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "AskedOn",
                table: "Samples",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "AskedWeightMicrograms",
                table: "Samples",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "BagCondition",
                table: "Samples",
                type: "character varying(200)",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Courier",
                table: "Samples",
                type: "character varying(80)",
                maxLength: 80,
                nullable: true);

            migrationBuilder.AddColumn<DateTime>(
                name: "HereSince",
                table: "Samples",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "ReceivedBy",
                table: "Samples",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "SentBy",
                table: "Samples",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "SentOn",
                table: "Samples",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "TrackingNumber",
                table: "Samples",
                type: "character varying(80)",
                maxLength: 80,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "SearchText",
                table: "People",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<long>(
                name: "RepeatabilityMillionths",
                table: "PanelResults",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "ReproducibilityMillionths",
                table: "PanelResults",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "WeightRule",
                table: "PanelResults",
                type: "character varying(400)",
                maxLength: 400,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "SearchText",
                table: "OfferLists",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Colour",
                table: "GreenGrades",
                type: "character varying(60)",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "HasForeignOdour",
                table: "GreenGrades",
                type: "boolean",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Odour",
                table: "GreenGrades",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "QualityClass",
                table: "GreenGrades",
                type: "character varying(100)",
                maxLength: 100,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "StatedScreen",
                table: "GreenGrades",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Version",
                table: "GreenGrades",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "Blinding",
                table: "CuppingSessions",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "CupMilliliters",
                table: "CuppingSessions",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "DescriptiveFormId",
                table: "CuppingSessions",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "DoseMicrograms",
                table: "CuppingSessions",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "ProtocolId",
                table: "CuppingSessions",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "SearchText",
                table: "CuppingSessions",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Water",
                table: "CuppingSessions",
                type: "character varying(200)",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "Weight",
                table: "CupperEffects",
                type: "double precision",
                nullable: false,
                defaultValue: 1.0);

            migrationBuilder.AddColumn<string>(
                name: "WeightReason",
                table: "CupperEffects",
                type: "character varying(200)",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddPrimaryKey(
                name: "PK_SessionSamples",
                table: "SessionSamples",
                columns: new[] { "SessionId", "SampleId", "Repeat" });

            migrationBuilder.CreateTable(
                name: "CuppingHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    CupMilliliters = table.Column<int>(type: "integer", nullable: false),
                    Water = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    MostInFlight = table.Column<int>(type: "integer", nullable: false),
                    UsesDescriptiveForm = table.Column<bool>(type: "boolean", nullable: false),
                    DosePerLiterMicrograms = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CuppingHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DescriptiveForms",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Edition = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Revision = table.Column<int>(type: "integer", nullable: false),
                    Rules = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DescriptiveForms", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Descriptors",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Word = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Family = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Descriptors", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DiscussedScores",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    SampleId = table.Column<Guid>(type: "uuid", nullable: false),
                    Reason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    PanelResultId = table.Column<Guid>(type: "uuid", nullable: false),
                    PointsMillionths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DiscussedScores", x => x.Id);
                    table.ForeignKey(
                        name: "FK_DiscussedScores_PanelResults_PanelResultId",
                        column: x => x.PanelResultId,
                        principalTable: "PanelResults",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_DiscussedScores_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_DiscussedScores_Samples_SampleId",
                        column: x => x.SampleId,
                        principalTable: "Samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "EarlierSheets",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    WrittenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    MarkHundredths = table.Column<int[]>(type: "integer[]", nullable: false),
                    GoodCups = table.Column<int[]>(type: "integer[]", nullable: false),
                    DeductedCups = table.Column<int[]>(type: "integer[]", nullable: false),
                    Descriptors = table.Column<string[]>(type: "text[]", nullable: false),
                    Note = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    ReopenedBy = table.Column<Guid>(type: "uuid", nullable: false),
                    ReopenedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Reason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    SheetId = table.Column<Guid>(type: "uuid", nullable: false),
                    TotalMillionths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_EarlierSheets", x => x.Id);
                    table.ForeignKey(
                        name: "FK_EarlierSheets_People_ReopenedBy",
                        column: x => x.ReopenedBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_EarlierSheets_ScoreSheets_SheetId",
                        column: x => x.SheetId,
                        principalTable: "ScoreSheets",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "GradeLimits",
                columns: table => new
                {
                    Position = table.Column<int>(type: "integer", nullable: false),
                    GreenGradeId = table.Column<Guid>(type: "uuid", nullable: false),
                    Limits = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    Name = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    Found = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: true),
                    Limit = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    Passed = table.Column<bool>(type: "boolean", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_GradeLimits", x => new { x.GreenGradeId, x.Position });
                    table.ForeignKey(
                        name: "FK_GradeLimits_GreenGrades_GreenGradeId",
                        column: x => x.GreenGradeId,
                        principalTable: "GreenGrades",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "GradingHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Fractions = table.Column<int>(type: "integer", nullable: false),
                    MoistureMethod = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_GradingHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "PanelMembers",
                columns: table => new
                {
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    SessionId = table.Column<Guid>(type: "uuid", nullable: false),
                    Seat = table.Column<int>(type: "integer", nullable: false),
                    Pours = table.Column<bool>(type: "boolean", nullable: false),
                    ServingOrder = table.Column<int[]>(type: "integer[]", nullable: false),
                    JoinedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PanelMembers", x => new { x.SessionId, x.PersonId });
                    table.ForeignKey(
                        name: "FK_PanelMembers_CuppingSessions_SessionId",
                        column: x => x.SessionId,
                        principalTable: "CuppingSessions",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_PanelMembers_People_PersonId",
                        column: x => x.PersonId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PouredFlights",
                columns: table => new
                {
                    Number = table.Column<int>(type: "integer", nullable: false),
                    SessionId = table.Column<Guid>(type: "uuid", nullable: false),
                    PouredAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    ExtendedMinutes = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PouredFlights", x => new { x.SessionId, x.Number });
                    table.ForeignKey(
                        name: "FK_PouredFlights_CuppingSessions_SessionId",
                        column: x => x.SessionId,
                        principalTable: "CuppingSessions",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "RoastProtocols",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    From = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    LeastSeconds = table.Column<int>(type: "integer", nullable: false),
                    MostSeconds = table.Column<int>(type: "integer", nullable: false),
                    LeastRestMinutes = table.Column<int>(type: "integer", nullable: false),
                    MostRestMinutes = table.Column<int>(type: "integer", nullable: false),
                    ColourScale = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    ToleranceTenths = table.Column<int>(type: "integer", nullable: false),
                    GroundTenths = table.Column<int>(type: "integer", nullable: true),
                    WholeBeanTenths = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RoastProtocols", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SampleHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    AskedDays = table.Column<int>(type: "integer", nullable: true),
                    OnTheWayDays = table.Column<int>(type: "integer", nullable: true),
                    ReceivedDays = table.Column<int>(type: "integer", nullable: true),
                    GradedDays = table.Column<int>(type: "integer", nullable: true),
                    RoastedDays = table.Column<int>(type: "integer", nullable: true),
                    CuppedDays = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SampleHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SampleSetBacks",
                columns: table => new
                {
                    Number = table.Column<int>(type: "integer", nullable: false),
                    SampleId = table.Column<Guid>(type: "uuid", nullable: false),
                    Step = table.Column<int>(type: "integer", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    StepBy = table.Column<Guid>(type: "uuid", nullable: true),
                    Said = table.Column<string>(type: "character varying(400)", maxLength: 400, nullable: false),
                    Reason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SampleSetBacks", x => new { x.SampleId, x.Number });
                    table.ForeignKey(
                        name: "FK_SampleSetBacks_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SampleSetBacks_People_StepBy",
                        column: x => x.StepBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SampleSetBacks_Samples_SampleId",
                        column: x => x.SampleId,
                        principalTable: "Samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SheetDrafts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    ChangeCount = table.Column<int>(type: "integer", nullable: false),
                    SessionId = table.Column<Guid>(type: "uuid", nullable: false),
                    CupperId = table.Column<Guid>(type: "uuid", nullable: false),
                    Code = table.Column<string>(type: "character varying(8)", maxLength: 8, nullable: false),
                    Values = table.Column<string>(type: "text", nullable: false),
                    Filled = table.Column<int>(type: "integer", nullable: false),
                    ChangedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    HandedInAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SheetDrafts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_SheetDrafts_CuppingSessions_SessionId",
                        column: x => x.SessionId,
                        principalTable: "CuppingSessions",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SheetDrafts_People_CupperId",
                        column: x => x.CupperId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "TastingProtocols",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Revision = table.Column<int>(type: "integer", nullable: false),
                    Steps = table.Column<string>(type: "text", nullable: false),
                    Reason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TastingProtocols", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SampleRoasts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    SampleId = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    RoastedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: true),
                    ProtocolId = table.Column<Guid>(type: "uuid", nullable: true),
                    TotalSeconds = table.Column<int>(type: "integer", nullable: true),
                    FirstCrackSeconds = table.Column<int>(type: "integer", nullable: true),
                    ColourScale = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    CuppingAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Note = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    GroundTenths = table.Column<int>(type: "integer", nullable: true),
                    MassInMicrograms = table.Column<long>(type: "bigint", nullable: false),
                    MassOutMicrograms = table.Column<long>(type: "bigint", nullable: true),
                    WholeBeanTenths = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SampleRoasts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_SampleRoasts_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SampleRoasts_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SampleRoasts_RoastProtocols_ProtocolId",
                        column: x => x.ProtocolId,
                        principalTable: "RoastProtocols",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SampleRoasts_Samples_SampleId",
                        column: x => x.SampleId,
                        principalTable: "Samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "DraftChanges",
                columns: table => new
                {
                    DraftId = table.Column<Guid>(type: "uuid", nullable: false),
                    Key = table.Column<Guid>(type: "uuid", nullable: false),
                    LedTo = table.Column<int>(type: "integer", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DraftChanges", x => new { x.Key, x.DraftId });
                    table.ForeignKey(
                        name: "FK_DraftChanges_SheetDrafts_DraftId",
                        column: x => x.DraftId,
                        principalTable: "SheetDrafts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ScoreSheets_SessionId_SampleId_Repeat_CupperId",
                table: "ScoreSheets",
                columns: new[] { "SessionId", "SampleId", "Repeat", "CupperId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Samples_AskedBy",
                table: "Samples",
                column: "AskedBy");

            migrationBuilder.CreateIndex(
                name: "IX_Samples_AskedOf",
                table: "Samples",
                column: "AskedOf");

            migrationBuilder.CreateIndex(
                name: "IX_Samples_ReceivedBy",
                table: "Samples",
                column: "ReceivedBy");

            migrationBuilder.CreateIndex(
                name: "IX_Samples_SentBy",
                table: "Samples",
                column: "SentBy");

            migrationBuilder.CreateIndex(
                name: "IX_CuppingSessions_DescriptiveFormId",
                table: "CuppingSessions",
                column: "DescriptiveFormId");

            migrationBuilder.CreateIndex(
                name: "IX_CuppingSessions_ProtocolId",
                table: "CuppingSessions",
                column: "ProtocolId");

            migrationBuilder.CreateIndex(
                name: "IX_DescriptiveForms_Name_Edition_Revision",
                table: "DescriptiveForms",
                columns: new[] { "Name", "Edition", "Revision" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Descriptors_Word",
                table: "Descriptors",
                column: "Word",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_DiscussedScores_By",
                table: "DiscussedScores",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_DiscussedScores_PanelResultId",
                table: "DiscussedScores",
                column: "PanelResultId");

            migrationBuilder.CreateIndex(
                name: "IX_DiscussedScores_SampleId",
                table: "DiscussedScores",
                column: "SampleId");

            migrationBuilder.CreateIndex(
                name: "IX_DraftChanges_DraftId",
                table: "DraftChanges",
                column: "DraftId");

            migrationBuilder.CreateIndex(
                name: "IX_EarlierSheets_ReopenedBy",
                table: "EarlierSheets",
                column: "ReopenedBy");

            migrationBuilder.CreateIndex(
                name: "IX_EarlierSheets_SheetId",
                table: "EarlierSheets",
                column: "SheetId");

            migrationBuilder.CreateIndex(
                name: "IX_PanelMembers_PersonId",
                table: "PanelMembers",
                column: "PersonId");

            migrationBuilder.CreateIndex(
                name: "IX_SampleRoasts_By",
                table: "SampleRoasts",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_SampleRoasts_LotId",
                table: "SampleRoasts",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_SampleRoasts_ProtocolId",
                table: "SampleRoasts",
                column: "ProtocolId");

            migrationBuilder.CreateIndex(
                name: "IX_SampleRoasts_RoastedAt",
                table: "SampleRoasts",
                column: "RoastedAt");

            migrationBuilder.CreateIndex(
                name: "IX_SampleRoasts_SampleId",
                table: "SampleRoasts",
                column: "SampleId");

            migrationBuilder.CreateIndex(
                name: "IX_SampleSetBacks_By",
                table: "SampleSetBacks",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_SampleSetBacks_StepBy",
                table: "SampleSetBacks",
                column: "StepBy");

            migrationBuilder.CreateIndex(
                name: "IX_SheetDrafts_CupperId",
                table: "SheetDrafts",
                column: "CupperId");

            migrationBuilder.CreateIndex(
                name: "IX_SheetDrafts_SessionId_CupperId_Code",
                table: "SheetDrafts",
                columns: new[] { "SessionId", "CupperId", "Code" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_TastingProtocols_Name_Revision",
                table: "TastingProtocols",
                columns: new[] { "Name", "Revision" },
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "FK_CuppingSessions_DescriptiveForms_DescriptiveFormId",
                table: "CuppingSessions",
                column: "DescriptiveFormId",
                principalTable: "DescriptiveForms",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "FK_CuppingSessions_TastingProtocols_ProtocolId",
                table: "CuppingSessions",
                column: "ProtocolId",
                principalTable: "TastingProtocols",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "FK_Samples_People_AskedBy",
                table: "Samples",
                column: "AskedBy",
                principalTable: "People",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "FK_Samples_People_ReceivedBy",
                table: "Samples",
                column: "ReceivedBy",
                principalTable: "People",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "FK_Samples_People_SentBy",
                table: "Samples",
                column: "SentBy",
                principalTable: "People",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "FK_Samples_Suppliers_AskedOf",
                table: "Samples",
                column: "AskedOf",
                principalTable: "Suppliers",
                principalColumn: "Id",
                onDelete: ReferentialAction.Restrict);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "FK_CuppingSessions_DescriptiveForms_DescriptiveFormId",
                table: "CuppingSessions");

            migrationBuilder.DropForeignKey(
                name: "FK_CuppingSessions_TastingProtocols_ProtocolId",
                table: "CuppingSessions");

            migrationBuilder.DropForeignKey(
                name: "FK_Samples_People_AskedBy",
                table: "Samples");

            migrationBuilder.DropForeignKey(
                name: "FK_Samples_People_ReceivedBy",
                table: "Samples");

            migrationBuilder.DropForeignKey(
                name: "FK_Samples_People_SentBy",
                table: "Samples");

            migrationBuilder.DropForeignKey(
                name: "FK_Samples_Suppliers_AskedOf",
                table: "Samples");

            migrationBuilder.DropTable(
                name: "CuppingHabits");

            migrationBuilder.DropTable(
                name: "DescriptiveForms");

            migrationBuilder.DropTable(
                name: "Descriptors");

            migrationBuilder.DropTable(
                name: "DiscussedScores");

            migrationBuilder.DropTable(
                name: "DraftChanges");

            migrationBuilder.DropTable(
                name: "EarlierSheets");

            migrationBuilder.DropTable(
                name: "GradeLimits");

            migrationBuilder.DropTable(
                name: "GradingHabits");

            migrationBuilder.DropTable(
                name: "PanelMembers");

            migrationBuilder.DropTable(
                name: "PouredFlights");

            migrationBuilder.DropTable(
                name: "SampleHabits");

            migrationBuilder.DropTable(
                name: "SampleRoasts");

            migrationBuilder.DropTable(
                name: "SampleSetBacks");

            migrationBuilder.DropTable(
                name: "TastingProtocols");

            migrationBuilder.DropTable(
                name: "SheetDrafts");

            migrationBuilder.DropTable(
                name: "RoastProtocols");

            migrationBuilder.DropPrimaryKey(
                name: "PK_SessionSamples",
                table: "SessionSamples");

            migrationBuilder.DropIndex(
                name: "IX_ScoreSheets_SessionId_SampleId_Repeat_CupperId",
                table: "ScoreSheets");

            migrationBuilder.DropIndex(
                name: "IX_Samples_AskedBy",
                table: "Samples");

            migrationBuilder.DropIndex(
                name: "IX_Samples_AskedOf",
                table: "Samples");

            migrationBuilder.DropIndex(
                name: "IX_Samples_ReceivedBy",
                table: "Samples");

            migrationBuilder.DropIndex(
                name: "IX_Samples_SentBy",
                table: "Samples");

            migrationBuilder.DropIndex(
                name: "IX_CuppingSessions_DescriptiveFormId",
                table: "CuppingSessions");

            migrationBuilder.DropIndex(
                name: "IX_CuppingSessions_ProtocolId",
                table: "CuppingSessions");

            migrationBuilder.DropColumn(
                name: "Repeat",
                table: "SessionSamples");

            migrationBuilder.DropColumn(
                name: "Flight",
                table: "SessionSamples");

            migrationBuilder.DropColumn(
                name: "IsReference",
                table: "SessionSamples");

            migrationBuilder.DropColumn(
                name: "Cups",
                table: "ScoreSheets");

            migrationBuilder.DropColumn(
                name: "DefectName",
                table: "ScoreSheets");

            migrationBuilder.DropColumn(
                name: "Description",
                table: "ScoreSheets");

            migrationBuilder.DropColumn(
                name: "IsReopened",
                table: "ScoreSheets");

            migrationBuilder.DropColumn(
                name: "Repeat",
                table: "ScoreSheets");

            migrationBuilder.DropColumn(
                name: "AskedBy",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "AskedOf",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "AskedOn",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "AskedWeightMicrograms",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "BagCondition",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "Courier",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "HereSince",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "ReceivedBy",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "SentBy",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "SentOn",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "TrackingNumber",
                table: "Samples");

            migrationBuilder.DropColumn(
                name: "SearchText",
                table: "People");

            migrationBuilder.DropColumn(
                name: "RepeatabilityMillionths",
                table: "PanelResults");

            migrationBuilder.DropColumn(
                name: "ReproducibilityMillionths",
                table: "PanelResults");

            migrationBuilder.DropColumn(
                name: "WeightRule",
                table: "PanelResults");

            migrationBuilder.DropColumn(
                name: "SearchText",
                table: "OfferLists");

            migrationBuilder.DropColumn(
                name: "Colour",
                table: "GreenGrades");

            migrationBuilder.DropColumn(
                name: "HasForeignOdour",
                table: "GreenGrades");

            migrationBuilder.DropColumn(
                name: "Odour",
                table: "GreenGrades");

            migrationBuilder.DropColumn(
                name: "QualityClass",
                table: "GreenGrades");

            migrationBuilder.DropColumn(
                name: "StatedScreen",
                table: "GreenGrades");

            migrationBuilder.DropColumn(
                name: "Version",
                table: "GreenGrades");

            migrationBuilder.DropColumn(
                name: "Blinding",
                table: "CuppingSessions");

            migrationBuilder.DropColumn(
                name: "CupMilliliters",
                table: "CuppingSessions");

            migrationBuilder.DropColumn(
                name: "DescriptiveFormId",
                table: "CuppingSessions");

            migrationBuilder.DropColumn(
                name: "DoseMicrograms",
                table: "CuppingSessions");

            migrationBuilder.DropColumn(
                name: "ProtocolId",
                table: "CuppingSessions");

            migrationBuilder.DropColumn(
                name: "SearchText",
                table: "CuppingSessions");

            migrationBuilder.DropColumn(
                name: "Water",
                table: "CuppingSessions");

            migrationBuilder.DropColumn(
                name: "Weight",
                table: "CupperEffects");

            migrationBuilder.DropColumn(
                name: "WeightReason",
                table: "CupperEffects");

            migrationBuilder.AlterColumn<long>(
                name: "WeightMicrograms",
                table: "Samples",
                type: "bigint",
                nullable: false,
                defaultValue: 0L,
                oldClrType: typeof(long),
                oldType: "bigint",
                oldNullable: true);

            migrationBuilder.AlterColumn<DateOnly>(
                name: "ReceivedOn",
                table: "Samples",
                type: "date",
                nullable: false,
                defaultValue: new DateOnly(1, 1, 1),
                oldClrType: typeof(DateOnly),
                oldType: "date",
                oldNullable: true);

            migrationBuilder.AddPrimaryKey(
                name: "PK_SessionSamples",
                table: "SessionSamples",
                columns: new[] { "SessionId", "SampleId" });

            migrationBuilder.CreateIndex(
                name: "IX_ScoreSheets_SessionId_SampleId_CupperId",
                table: "ScoreSheets",
                columns: new[] { "SessionId", "SampleId", "CupperId" },
                unique: true);
        }
    }
}
