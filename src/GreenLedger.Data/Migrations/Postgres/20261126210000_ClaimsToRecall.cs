using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
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
                type: "bigint",
                nullable: false,
                defaultValue: 10000L);

            migrationBuilder.AddColumn<int>(
                name: "PastCropMonths",
                table: "StockHabits",
                type: "integer",
                nullable: false,
                defaultValue: 12);

            migrationBuilder.AddColumn<int>(
                name: "WeighFrom",
                table: "StandardForms",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<DateOnly>(
                name: "AvailableOn",
                table: "Shipments",
                type: "date",
                nullable: true);

            migrationBuilder.AlterColumn<Guid>(
                name: "ArrivalId",
                table: "Claims",
                type: "uuid",
                nullable: true,
                oldClrType: typeof(Guid),
                oldType: "uuid");

            migrationBuilder.AddColumn<Guid>(
                name: "ShipmentId",
                table: "Claims",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "ArchiveTakings",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
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

            migrationBuilder.CreateTable(
                name: "CertificateHabits",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    FirstAlertDays = table.Column<int>(type: "integer", nullable: false),
                    LastAlertDays = table.Column<int>(type: "integer", nullable: false),
                    ByContractDay = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CertificateHabits", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Certificates",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Scheme = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    Holder = table.Column<int>(type: "integer", nullable: false),
                    SupplierId = table.Column<Guid>(type: "uuid", nullable: true),
                    ProducerId = table.Column<Guid>(type: "uuid", nullable: true),
                    Number = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Scope = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    IssuedBy = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: true),
                    From = table.Column<DateOnly>(type: "date", nullable: false),
                    Until = table.Column<DateOnly>(type: "date", nullable: false),
                    Standing = table.Column<int>(type: "integer", nullable: false),
                    StandingReason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true),
                    StandingBy = table.Column<Guid>(type: "uuid", nullable: true),
                    StandingAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Certificates", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Certificates_People_StandingBy",
                        column: x => x.StandingBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Certificates_Producers_ProducerId",
                        column: x => x.ProducerId,
                        principalTable: "Producers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Certificates_Suppliers_SupplierId",
                        column: x => x.SupplierId,
                        principalTable: "Suppliers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Erasures",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<int>(type: "integer", nullable: false),
                    Designation = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    SubjectId = table.Column<Guid>(type: "uuid", nullable: false),
                    Reason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    Texts = table.Column<int>(type: "integer", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Erasures", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Erasures_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ExchangeNames",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    WebAddress = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    CompanyPrefix = table.Column<string>(type: "character varying(12)", maxLength: 12, nullable: true),
                    ItemReference = table.Column<string>(type: "character varying(13)", maxLength: 13, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ExchangeNames", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "FeedbackCopies",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    SupplierId = table.Column<Guid>(type: "uuid", nullable: false),
                    Language = table.Column<string>(type: "character varying(2)", maxLength: 2, nullable: false),
                    LotIds = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    StoredFileId = table.Column<Guid>(type: "uuid", nullable: false),
                    IsMailed = table.Column<bool>(type: "boolean", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FeedbackCopies", x => x.Id);
                    table.ForeignKey(
                        name: "FK_FeedbackCopies_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_FeedbackCopies_StoredFiles_StoredFileId",
                        column: x => x.StoredFileId,
                        principalTable: "StoredFiles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_FeedbackCopies_Suppliers_SupplierId",
                        column: x => x.SupplierId,
                        principalTable: "Suppliers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "MockRecalls",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Ref = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    From = table.Column<int>(type: "integer", nullable: false),
                    StartId = table.Column<Guid>(type: "uuid", nullable: false),
                    StartName = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Reason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    StartedBy = table.Column<Guid>(type: "uuid", nullable: false),
                    StartedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    EndedBy = table.Column<Guid>(type: "uuid", nullable: true),
                    EndedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Findings = table.Column<string>(type: "text", nullable: true),
                    Learned = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_MockRecalls", x => x.Id);
                    table.ForeignKey(
                        name: "FK_MockRecalls_People_EndedBy",
                        column: x => x.EndedBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_MockRecalls_People_StartedBy",
                        column: x => x.StartedBy,
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

            migrationBuilder.CreateIndex(
                name: "IX_Certificates_ProducerId",
                table: "Certificates",
                column: "ProducerId");

            migrationBuilder.CreateIndex(
                name: "IX_Certificates_StandingBy",
                table: "Certificates",
                column: "StandingBy");

            migrationBuilder.CreateIndex(
                name: "IX_Certificates_SupplierId",
                table: "Certificates",
                column: "SupplierId");

            migrationBuilder.CreateIndex(
                name: "IX_Certificates_Until",
                table: "Certificates",
                column: "Until");

            migrationBuilder.CreateIndex(
                name: "IX_Erasures_By",
                table: "Erasures",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_Erasures_Kind_Designation",
                table: "Erasures",
                columns: new[] { "Kind", "Designation" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Erasures_SubjectId",
                table: "Erasures",
                column: "SubjectId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_FeedbackCopies_By",
                table: "FeedbackCopies",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_FeedbackCopies_StoredFileId",
                table: "FeedbackCopies",
                column: "StoredFileId");

            migrationBuilder.CreateIndex(
                name: "IX_FeedbackCopies_SupplierId",
                table: "FeedbackCopies",
                column: "SupplierId");

            migrationBuilder.CreateIndex(
                name: "IX_MockRecalls_EndedBy",
                table: "MockRecalls",
                column: "EndedBy");

            migrationBuilder.CreateIndex(
                name: "IX_MockRecalls_Ref",
                table: "MockRecalls",
                column: "Ref",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_MockRecalls_StartedAt",
                table: "MockRecalls",
                column: "StartedAt");

            migrationBuilder.CreateIndex(
                name: "IX_MockRecalls_StartedBy",
                table: "MockRecalls",
                column: "StartedBy");

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

            migrationBuilder.DropTable(
                name: "CertificateHabits");

            migrationBuilder.DropTable(
                name: "Certificates");

            migrationBuilder.DropTable(
                name: "Erasures");

            migrationBuilder.DropTable(
                name: "ExchangeNames");

            migrationBuilder.DropTable(
                name: "FeedbackCopies");

            migrationBuilder.DropTable(
                name: "MockRecalls");

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
                type: "uuid",
                nullable: false,
                defaultValue: new Guid("00000000-0000-0000-0000-000000000000"),
                oldClrType: typeof(Guid),
                oldType: "uuid",
                oldNullable: true);
        }
    }
}
