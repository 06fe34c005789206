using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class ArrivalToStock : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateOnly>(
                name: "BoardedOn",
                table: "ShipmentLots",
                type: "date",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "IsUnapproved",
                table: "ShipmentLots",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateTable(
                name: "CalendarFeeds",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    OwnerId = table.Column<Guid>(type: "uuid", nullable: false),
                    Hash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    MadeAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    LastReadAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    RevokedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
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
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Ref = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    ArrivalId = table.Column<Guid>(type: "uuid", nullable: false),
                    ContractId = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Case = table.Column<string>(type: "text", nullable: false),
                    LastDay = table.Column<DateOnly>(type: "date", nullable: true),
                    IsLate = table.Column<bool>(type: "boolean", nullable: false),
                    LateReason = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Outcome = table.Column<int>(type: "integer", nullable: true),
                    SettledOn = table.Column<DateOnly>(type: "date", nullable: true),
                    NoteCount = table.Column<int>(type: "integer", nullable: false),
                    SearchText = table.Column<string>(type: "text", nullable: false),
                    AmountCurrency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: true),
                    AmountMinorUnits = table.Column<long>(type: "bigint", nullable: true),
                    SettledCurrency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: true),
                    SettledMinorUnits = table.Column<long>(type: "bigint", nullable: true)
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
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Position = table.Column<int>(type: "integer", nullable: false),
                    Incoterms = table.Column<string>(type: "text", nullable: false),
                    Origins = table.Column<string>(type: "text", nullable: false),
                    Destinations = table.Column<string>(type: "text", nullable: false),
                    Certificate = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Note = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    IsInUse = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DocumentRules", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DueHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    DocumentDays = table.Column<int>(type: "integer", nullable: false),
                    ReceiptDays = table.Column<int>(type: "integer", nullable: false),
                    CuppingDays = table.Column<int>(type: "integer", nullable: false),
                    NoticeDays = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DueHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "QualityBands",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    FormId = table.Column<Guid>(type: "uuid", nullable: false),
                    Bands = table.Column<string>(type: "text", nullable: false)
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
                name: "ClaimNotes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Side = table.Column<int>(type: "integer", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Text = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    ClaimId = table.Column<Guid>(type: "uuid", nullable: false)
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
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Outcome = table.Column<int>(type: "integer", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Words = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    TakenBackBecause = table.Column<string>(type: "character varying(1000)", maxLength: 1000, nullable: true),
                    TakenBackBy = table.Column<Guid>(type: "uuid", nullable: true),
                    TakenBackAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    ClaimId = table.Column<Guid>(type: "uuid", nullable: false),
                    AmountCurrency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: true),
                    AmountMinorUnits = table.Column<long>(type: "bigint", nullable: true)
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
                name: "ShipmentDocuments",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Position = table.Column<int>(type: "integer", nullable: false),
                    RuleId = table.Column<Guid>(type: "uuid", nullable: true),
                    State = table.Column<int>(type: "integer", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: true),
                    Reason = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: true),
                    AttachmentId = table.Column<Guid>(type: "uuid", nullable: true),
                    ShipmentId = table.Column<Guid>(type: "uuid", nullable: false)
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
                name: "IX_QualityBands_FormId",
                table: "QualityBands",
                column: "FormId");

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
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "CalendarFeeds");

            migrationBuilder.DropTable(
                name: "ClaimNotes");

            migrationBuilder.DropTable(
                name: "ClaimSettlements");

            migrationBuilder.DropTable(
                name: "DueHabits");

            migrationBuilder.DropTable(
                name: "QualityBands");

            migrationBuilder.DropTable(
                name: "ShipmentDocuments");

            migrationBuilder.DropTable(
                name: "Claims");

            migrationBuilder.DropTable(
                name: "DocumentRules");

            migrationBuilder.DropColumn(
                name: "BoardedOn",
                table: "ShipmentLots");

            migrationBuilder.DropColumn(
                name: "IsUnapproved",
                table: "ShipmentLots");
        }
    }
}
