using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Sqlite
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
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "Flight",
                table: "SessionSamples",
                type: "INTEGER",
                nullable: false,
                defaultValue: 1);

            migrationBuilder.AddColumn<bool>(
                name: "IsReference",
                table: "SessionSamples",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<string>(
                name: "Cups",
                table: "ScoreSheets",
                type: "TEXT",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<string>(
                name: "DefectName",
                table: "ScoreSheets",
                type: "TEXT",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Description",
                table: "ScoreSheets",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "IsReopened",
                table: "ScoreSheets",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<int>(
                name: "Repeat",
                table: "ScoreSheets",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AlterColumn<long>(
                name: "WeightMicrograms",
                table: "Samples",
                type: "INTEGER",
                nullable: true,
                oldClrType: typeof(long),
                oldType: "INTEGER");

            migrationBuilder.AlterColumn<DateOnly>(
                name: "ReceivedOn",
                table: "Samples",
                type: "TEXT",
                nullable: true,
                oldClrType: typeof(DateOnly),
                oldType: "TEXT");

            migrationBuilder.AddColumn<Guid>(
                name: "AskedBy",
                table: "Samples",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "AskedOf",
                table: "Samples",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "AskedOn",
                table: "Samples",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "AskedWeightMicrograms",
                table: "Samples",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "BagCondition",
                table: "Samples",
                type: "TEXT",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Courier",
                table: "Samples",
                type: "TEXT",
                maxLength: 80,
                nullable: true);

            migrationBuilder.AddColumn<DateTime>(
                name: "HereSince",
                table: "Samples",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "ReceivedBy",
                table: "Samples",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "SentBy",
                table: "Samples",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "SentOn",
                table: "Samples",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "TrackingNumber",
                table: "Samples",
                type: "TEXT",
                maxLength: 80,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "SearchText",
                table: "People",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<long>(
                name: "RepeatabilityMillionths",
                table: "PanelResults",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "ReproducibilityMillionths",
                table: "PanelResults",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "WeightRule",
                table: "PanelResults",
                type: "TEXT",
                maxLength: 400,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "SearchText",
                table: "OfferLists",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Colour",
                table: "GreenGrades",
                type: "TEXT",
                maxLength: 60,
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "HasForeignOdour",
                table: "GreenGrades",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Odour",
                table: "GreenGrades",
                type: "TEXT",
                maxLength: 100,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "QualityClass",
                table: "GreenGrades",
                type: "TEXT",
                maxLength: 100,
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "StatedScreen",
                table: "GreenGrades",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Version",
                table: "GreenGrades",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "Blinding",
                table: "CuppingSessions",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "CupMilliliters",
                table: "CuppingSessions",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "DescriptiveFormId",
                table: "CuppingSessions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "DoseMicrograms",
                table: "CuppingSessions",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<Guid>(
                name: "ProtocolId",
                table: "CuppingSessions",
                type: "TEXT",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "SearchText",
                table: "CuppingSessions",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Water",
                table: "CuppingSessions",
                type: "TEXT",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "Weight",
                table: "CupperEffects",
                type: "REAL",
                nullable: false,
                defaultValue: 1.0);

            migrationBuilder.AddColumn<string>(
                name: "WeightReason",
                table: "CupperEffects",
                type: "TEXT",
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
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    CupMilliliters = table.Column<int>(type: "INTEGER", nullable: false),
                    Water = table.Column<string>(type: "TEXT", maxLength: 200, nullable: true),
                    MostInFlight = table.Column<int>(type: "INTEGER", nullable: false),
                    UsesDescriptiveForm = table.Column<bool>(type: "INTEGER", nullable: false),
                    DosePerLiterMicrograms = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CuppingHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DescriptiveForms",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Edition = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Revision = table.Column<int>(type: "INTEGER", nullable: false),
                    Rules = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DescriptiveForms", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Descriptors",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Word = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Family = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Descriptors", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DiscussedScores",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    SampleId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false),
                    PanelResultId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PointsMillionths = table.Column<long>(type: "INTEGER", nullable: false)
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
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    WrittenAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    MarkHundredths = table.Column<string>(type: "TEXT", nullable: false),
                    GoodCups = table.Column<string>(type: "TEXT", nullable: false),
                    DeductedCups = table.Column<string>(type: "TEXT", nullable: false),
                    Descriptors = table.Column<string>(type: "TEXT", nullable: false),
                    Note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    ReopenedBy = table.Column<Guid>(type: "TEXT", nullable: false),
                    ReopenedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    SheetId = table.Column<Guid>(type: "TEXT", nullable: false),
                    TotalMillionths = table.Column<long>(type: "INTEGER", nullable: false)
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
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    GreenGradeId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Limits = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    Found = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true),
                    Limit = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    Passed = table.Column<bool>(type: "INTEGER", nullable: true)
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
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    Fractions = table.Column<int>(type: "INTEGER", nullable: false),
                    MoistureMethod = table.Column<string>(type: "TEXT", maxLength: 100, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_GradingHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "PanelMembers",
                columns: table => new
                {
                    PersonId = table.Column<Guid>(type: "TEXT", nullable: false),
                    SessionId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Seat = table.Column<int>(type: "INTEGER", nullable: false),
                    Pours = table.Column<bool>(type: "INTEGER", nullable: false),
                    ServingOrder = table.Column<string>(type: "TEXT", nullable: false),
                    JoinedAt = table.Column<DateTime>(type: "TEXT", nullable: true)
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
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    SessionId = table.Column<Guid>(type: "TEXT", nullable: false),
                    PouredAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    ExtendedMinutes = table.Column<int>(type: "INTEGER", nullable: false)
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
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    From = table.Column<DateTime>(type: "TEXT", nullable: false),
                    LeastSeconds = table.Column<int>(type: "INTEGER", nullable: false),
                    MostSeconds = table.Column<int>(type: "INTEGER", nullable: false),
                    LeastRestMinutes = table.Column<int>(type: "INTEGER", nullable: false),
                    MostRestMinutes = table.Column<int>(type: "INTEGER", nullable: false),
                    ColourScale = table.Column<string>(type: "TEXT", maxLength: 60, nullable: true),
                    ToleranceTenths = table.Column<int>(type: "INTEGER", nullable: false),
                    GroundTenths = table.Column<int>(type: "INTEGER", nullable: true),
                    WholeBeanTenths = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RoastProtocols", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SampleHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    AskedDays = table.Column<int>(type: "INTEGER", nullable: true),
                    OnTheWayDays = table.Column<int>(type: "INTEGER", nullable: true),
                    ReceivedDays = table.Column<int>(type: "INTEGER", nullable: true),
                    GradedDays = table.Column<int>(type: "INTEGER", nullable: true),
                    RoastedDays = table.Column<int>(type: "INTEGER", nullable: true),
                    CuppedDays = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SampleHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SampleSetBacks",
                columns: table => new
                {
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    SampleId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Step = table.Column<int>(type: "INTEGER", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    StepBy = table.Column<Guid>(type: "TEXT", nullable: true),
                    Said = table.Column<string>(type: "TEXT", maxLength: 400, nullable: false),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false)
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
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    ChangeCount = table.Column<int>(type: "INTEGER", nullable: false),
                    SessionId = table.Column<Guid>(type: "TEXT", nullable: false),
                    CupperId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Code = table.Column<string>(type: "TEXT", maxLength: 8, nullable: false),
                    Values = table.Column<string>(type: "TEXT", nullable: false),
                    Filled = table.Column<int>(type: "INTEGER", nullable: false),
                    ChangedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    HandedInAt = table.Column<DateTime>(type: "TEXT", nullable: true)
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
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Name = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    Revision = table.Column<int>(type: "INTEGER", nullable: false),
                    Steps = table.Column<string>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", maxLength: 500, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_TastingProtocols", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SampleRoasts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false),
                    SampleId = table.Column<Guid>(type: "TEXT", nullable: false),
                    LotId = table.Column<Guid>(type: "TEXT", nullable: false),
                    RoastedAt = table.Column<DateTime>(type: "TEXT", nullable: false),
                    By = table.Column<Guid>(type: "TEXT", nullable: true),
                    ProtocolId = table.Column<Guid>(type: "TEXT", nullable: true),
                    TotalSeconds = table.Column<int>(type: "INTEGER", nullable: true),
                    FirstCrackSeconds = table.Column<int>(type: "INTEGER", nullable: true),
                    ColourScale = table.Column<string>(type: "TEXT", maxLength: 60, nullable: true),
                    CuppingAt = table.Column<DateTime>(type: "TEXT", nullable: true),
                    Note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    GroundTenths = table.Column<int>(type: "INTEGER", nullable: true),
                    MassInMicrograms = table.Column<long>(type: "INTEGER", nullable: false),
                    MassOutMicrograms = table.Column<long>(type: "INTEGER", nullable: true),
                    WholeBeanTenths = table.Column<int>(type: "INTEGER", nullable: true)
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
                    DraftId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Key = table.Column<Guid>(type: "TEXT", nullable: false),
                    LedTo = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<DateTime>(type: "TEXT", nullable: false)
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
                type: "INTEGER",
                nullable: false,
                defaultValue: 0L,
                oldClrType: typeof(long),
                oldType: "INTEGER",
                oldNullable: true);

            migrationBuilder.AlterColumn<DateOnly>(
                name: "ReceivedOn",
                table: "Samples",
                type: "TEXT",
                nullable: false,
                defaultValue: new DateOnly(1, 1, 1),
                oldClrType: typeof(DateOnly),
                oldType: "TEXT",
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
