using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace GreenLedger.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "BuyingRules",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Revision = table.Column<int>(type: "integer", nullable: false),
                    IsInUse = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BuyingRules", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Countries",
                columns: table => new
                {
                    Code = table.Column<string>(type: "character varying(2)", maxLength: 2, nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    OtherNames = table.Column<string[]>(type: "text[]", nullable: false),
                    IcoCode = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: true),
                    CropYearStart = table.Column<int>(type: "integer", nullable: true),
                    HarvestFrom = table.Column<int>(type: "integer", nullable: true),
                    HarvestTo = table.Column<int>(type: "integer", nullable: true),
                    Ports = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    SearchText = table.Column<string>(type: "text", nullable: false),
                    UsualBagMicrograms = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Countries", x => x.Code);
                });

            migrationBuilder.CreateTable(
                name: "CuppingForms",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Code = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Edition = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    Revision = table.Column<int>(type: "integer", nullable: false),
                    Rules = table.Column<string>(type: "text", nullable: false),
                    Reason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CuppingForms", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "DataProtectionKeys",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    FriendlyName = table.Column<string>(type: "text", nullable: true),
                    Xml = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DataProtectionKeys", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ExchangeRates",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Currency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    Kind = table.Column<int>(type: "integer", nullable: false),
                    HundredMillionthsPerEuro = table.Column<long>(type: "bigint", nullable: false),
                    Source = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: true),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ExchangeRates", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "FuturesQuotes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Month = table.Column<string>(type: "character varying(9)", maxLength: 9, nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    QuotedTenThousandths = table.Column<long>(type: "bigint", nullable: false),
                    Source = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: true),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FuturesQuotes", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Houses",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Currency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: false),
                    ShowsPounds = table.Column<bool>(type: "boolean", nullable: false),
                    LongYears = table.Column<string>(type: "text", nullable: false),
                    RepeatabilityMillionths = table.Column<long>(type: "bigint", nullable: false),
                    ReproducibilityMillionths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Houses", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Jobs",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Kind = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Order = table.Column<string>(type: "text", nullable: false),
                    State = table.Column<int>(type: "integer", nullable: false),
                    Stage = table.Column<string>(type: "text", nullable: false),
                    Done = table.Column<int>(type: "integer", nullable: false),
                    Total = table.Column<int>(type: "integer", nullable: false),
                    Tries = table.Column<int>(type: "integer", nullable: false),
                    TakenBy = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    HeardAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    EndedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Outcome = table.Column<string>(type: "text", nullable: true),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Jobs", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ListChecks",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    HeaviestBagMicrograms = table.Column<long>(type: "bigint", nullable: false),
                    HeaviestBigBagMicrograms = table.Column<long>(type: "bigint", nullable: false),
                    WeightToleranceTenThousandths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ListChecks", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "People",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Roles = table.Column<int>(type: "integer", nullable: false),
                    IsActive = table.Column<bool>(type: "boolean", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_People", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ProcessMethods",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Family = table.Column<int>(type: "integer", nullable: false),
                    Synonyms = table.Column<string[]>(type: "text[]", nullable: false),
                    SearchText = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ProcessMethods", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Routes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    PortOfLoading = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    PortOfDestination = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Warehouse = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    OriginCountry = table.Column<string>(type: "character varying(2)", maxLength: 2, nullable: true),
                    IsInUse = table.Column<bool>(type: "boolean", nullable: false),
                    SharedOver = table.Column<int>(type: "integer", nullable: false),
                    ContainersPerShipment = table.Column<int>(type: "integer", nullable: false),
                    FillMicrograms = table.Column<long>(type: "bigint", nullable: false),
                    InsuredTenThousandths = table.Column<long>(type: "bigint", nullable: false),
                    WeightLossTenThousandths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Routes", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "StoredFiles",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(255)", maxLength: 255, nullable: false),
                    ContentType = table.Column<string>(type: "character varying(127)", maxLength: 127, nullable: false),
                    Size = table.Column<long>(type: "bigint", nullable: false),
                    Sha256 = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    IsParked = table.Column<bool>(type: "boolean", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: true),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StoredFiles", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "BuyingRulesRevisions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    RulesId = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Terms = table.Column<string>(type: "text", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: true),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BuyingRulesRevisions", x => x.Id);
                    table.ForeignKey(
                        name: "FK_BuyingRulesRevisions_BuyingRules_RulesId",
                        column: x => x.RulesId,
                        principalTable: "BuyingRules",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Producers",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Kind = table.Column<int>(type: "integer", nullable: false),
                    CountryCode = table.Column<string>(type: "character varying(2)", maxLength: 2, nullable: true),
                    Region = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    Place = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    AltitudeFrom = table.Column<int>(type: "integer", nullable: true),
                    AltitudeTo = table.Column<int>(type: "integer", nullable: true),
                    SearchText = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Producers", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Producers_Countries_CountryCode",
                        column: x => x.CountryCode,
                        principalTable: "Countries",
                        principalColumn: "Code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Suppliers",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Kind = table.Column<int>(type: "integer", nullable: false),
                    CountryCode = table.Column<string>(type: "character varying(2)", maxLength: 2, nullable: true),
                    Language = table.Column<string>(type: "character varying(2)", maxLength: 2, nullable: true),
                    Email = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    SearchText = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Suppliers", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Suppliers_Countries_CountryCode",
                        column: x => x.CountryCode,
                        principalTable: "Countries",
                        principalColumn: "Code",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Accounts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    PersonId = table.Column<Guid>(type: "uuid", nullable: false),
                    ShowsPounds = table.Column<bool>(type: "boolean", nullable: true),
                    UserName = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    NormalizedUserName = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    Email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    NormalizedEmail = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    EmailConfirmed = table.Column<bool>(type: "boolean", nullable: false),
                    PasswordHash = table.Column<string>(type: "text", nullable: true),
                    SecurityStamp = table.Column<string>(type: "text", nullable: true),
                    ConcurrencyStamp = table.Column<string>(type: "text", nullable: true),
                    PhoneNumber = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    PhoneNumberConfirmed = table.Column<bool>(type: "boolean", nullable: false),
                    TwoFactorEnabled = table.Column<bool>(type: "boolean", nullable: false),
                    LockoutEnd = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    LockoutEnabled = table.Column<bool>(type: "boolean", nullable: false),
                    AccessFailedCount = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Accounts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Accounts_People_PersonId",
                        column: x => x.PersonId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ApiTokens",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    OwnerId = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    Hash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    MadeAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    LastUsedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    RevokedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ApiTokens", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ApiTokens_People_OwnerId",
                        column: x => x.OwnerId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Changes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    RecordKind = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    RecordId = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    RecordName = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Act = table.Column<int>(type: "integer", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: true),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Before = table.Column<string>(type: "text", nullable: true),
                    After = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Changes", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Changes_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Notes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    About = table.Column<int>(type: "integer", nullable: false),
                    AboutId = table.Column<Guid>(type: "uuid", nullable: false),
                    Text = table.Column<string>(type: "character varying(4000)", maxLength: 4000, nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    RemovedBy = table.Column<Guid>(type: "uuid", nullable: true),
                    RemovedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Notes", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Notes_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "RouteLegs",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Position = table.Column<int>(type: "integer", nullable: false),
                    Stage = table.Column<int>(type: "integer", nullable: false),
                    Name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    Answer = table.Column<int>(type: "integer", nullable: false),
                    Basis = table.Column<int>(type: "integer", nullable: false),
                    AmountMillionths = table.Column<long>(type: "bigint", nullable: false),
                    Currency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: false),
                    Days = table.Column<int>(type: "integer", nullable: false),
                    Months = table.Column<int>(type: "integer", nullable: false),
                    Year = table.Column<int>(type: "integer", nullable: false),
                    RouteId = table.Column<Guid>(type: "uuid", nullable: false),
                    RateTenThousandths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RouteLegs", x => x.Id);
                    table.ForeignKey(
                        name: "FK_RouteLegs_Routes_RouteId",
                        column: x => x.RouteId,
                        principalTable: "Routes",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Attachments",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    About = table.Column<int>(type: "integer", nullable: false),
                    AboutId = table.Column<Guid>(type: "uuid", nullable: false),
                    StoredFileId = table.Column<Guid>(type: "uuid", nullable: false),
                    FileName = table.Column<string>(type: "character varying(255)", maxLength: 255, nullable: false),
                    ContentType = table.Column<string>(type: "character varying(127)", maxLength: 127, nullable: false),
                    SizeBytes = table.Column<long>(type: "bigint", nullable: false),
                    Sha256 = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    RemovedBy = table.Column<Guid>(type: "uuid", nullable: true),
                    RemovedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Attachments", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Attachments_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Attachments_StoredFiles_StoredFileId",
                        column: x => x.StoredFileId,
                        principalTable: "StoredFiles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "CuppingSessions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    Title = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    HeldOn = table.Column<DateOnly>(type: "date", nullable: false),
                    FormId = table.Column<Guid>(type: "uuid", nullable: false),
                    CupsPerSample = table.Column<int>(type: "integer", nullable: false),
                    IsPast = table.Column<bool>(type: "boolean", nullable: false),
                    SourceId = table.Column<Guid>(type: "uuid", nullable: true),
                    LaidOutBy = table.Column<Guid>(type: "uuid", nullable: true),
                    ClosedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    ClosedBy = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CuppingSessions", x => x.Id);
                    table.ForeignKey(
                        name: "FK_CuppingSessions_CuppingForms_FormId",
                        column: x => x.FormId,
                        principalTable: "CuppingForms",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CuppingSessions_People_ClosedBy",
                        column: x => x.ClosedBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CuppingSessions_People_LaidOutBy",
                        column: x => x.LaidOutBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_CuppingSessions_StoredFiles_SourceId",
                        column: x => x.SourceId,
                        principalTable: "StoredFiles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "StoredBytes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StoredBytes", x => x.Id);
                    table.ForeignKey(
                        name: "FK_StoredBytes_StoredFiles_Id",
                        column: x => x.Id,
                        principalTable: "StoredFiles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Lots",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    SupplierId = table.Column<Guid>(type: "uuid", nullable: true),
                    ProducerId = table.Column<Guid>(type: "uuid", nullable: true),
                    CountryCode = table.Column<string>(type: "character varying(2)", maxLength: 2, nullable: true),
                    Region = table.Column<string>(type: "text", nullable: true),
                    Ref = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Name = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Varieties = table.Column<string>(type: "text", nullable: true),
                    ProcessMethodId = table.Column<Guid>(type: "uuid", nullable: true),
                    ProcessAsWritten = table.Column<string>(type: "text", nullable: true),
                    CropYear = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: true),
                    Grade = table.Column<string>(type: "text", nullable: true),
                    Screen = table.Column<string>(type: "text", nullable: true),
                    AltitudeFrom = table.Column<int>(type: "integer", nullable: true),
                    AltitudeTo = table.Column<int>(type: "integer", nullable: true),
                    Bags = table.Column<int>(type: "integer", nullable: true),
                    Certificates = table.Column<string[]>(type: "text[]", nullable: false),
                    IcoMark = table.Column<string>(type: "text", nullable: true),
                    Notes = table.Column<string>(type: "text", nullable: true),
                    SearchText = table.Column<string>(type: "text", nullable: false),
                    BagWeightMicrograms = table.Column<long>(type: "bigint", nullable: true),
                    NetWeightMicrograms = table.Column<long>(type: "bigint", nullable: true),
                    StatedMoistureTenThousandths = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Lots", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Lots_Countries_CountryCode",
                        column: x => x.CountryCode,
                        principalTable: "Countries",
                        principalColumn: "Code",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Lots_ProcessMethods_ProcessMethodId",
                        column: x => x.ProcessMethodId,
                        principalTable: "ProcessMethods",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Lots_Producers_ProducerId",
                        column: x => x.ProducerId,
                        principalTable: "Producers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Lots_Suppliers_SupplierId",
                        column: x => x.SupplierId,
                        principalTable: "Suppliers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "OfferLists",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    SupplierId = table.Column<Guid>(type: "uuid", nullable: false),
                    FileName = table.Column<string>(type: "character varying(255)", maxLength: 255, nullable: false),
                    FileHash = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false),
                    ReceivedOn = table.Column<DateOnly>(type: "date", nullable: false),
                    StoredFileId = table.Column<Guid>(type: "uuid", nullable: false),
                    Mapping = table.Column<string>(type: "text", nullable: false),
                    Accepted = table.Column<int>(type: "integer", nullable: false),
                    Revised = table.Column<int>(type: "integer", nullable: false),
                    Unchanged = table.Column<int>(type: "integer", nullable: false),
                    SetAsideCount = table.Column<int>(type: "integer", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OfferLists", x => x.Id);
                    table.ForeignKey(
                        name: "FK_OfferLists_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_OfferLists_StoredFiles_StoredFileId",
                        column: x => x.StoredFileId,
                        principalTable: "StoredFiles",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_OfferLists_Suppliers_SupplierId",
                        column: x => x.SupplierId,
                        principalTable: "Suppliers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "SupplierMappings",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    SupplierId = table.Column<Guid>(type: "uuid", nullable: false),
                    Headings = table.Column<string>(type: "text", nullable: false),
                    Mapping = table.Column<string>(type: "text", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SupplierMappings", x => x.Id);
                    table.ForeignKey(
                        name: "FK_SupplierMappings_Suppliers_SupplierId",
                        column: x => x.SupplierId,
                        principalTable: "Suppliers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AccountClaims",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    UserId = table.Column<Guid>(type: "uuid", nullable: false),
                    ClaimType = table.Column<string>(type: "text", nullable: true),
                    ClaimValue = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AccountClaims", x => x.Id);
                    table.ForeignKey(
                        name: "FK_AccountClaims_Accounts_UserId",
                        column: x => x.UserId,
                        principalTable: "Accounts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AccountLogins",
                columns: table => new
                {
                    LoginProvider = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    ProviderKey = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    ProviderDisplayName = table.Column<string>(type: "text", nullable: true),
                    UserId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AccountLogins", x => new { x.LoginProvider, x.ProviderKey });
                    table.ForeignKey(
                        name: "FK_AccountLogins_Accounts_UserId",
                        column: x => x.UserId,
                        principalTable: "Accounts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AccountPasskeys",
                columns: table => new
                {
                    CredentialId = table.Column<byte[]>(type: "bytea", maxLength: 1024, nullable: false),
                    UserId = table.Column<Guid>(type: "uuid", nullable: false),
                    Data = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AccountPasskeys", x => x.CredentialId);
                    table.ForeignKey(
                        name: "FK_AccountPasskeys_Accounts_UserId",
                        column: x => x.UserId,
                        principalTable: "Accounts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AccountTokens",
                columns: table => new
                {
                    UserId = table.Column<Guid>(type: "uuid", nullable: false),
                    LoginProvider = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    Name = table.Column<string>(type: "character varying(128)", maxLength: 128, nullable: false),
                    Value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AccountTokens", x => new { x.UserId, x.LoginProvider, x.Name });
                    table.ForeignKey(
                        name: "FK_AccountTokens_Accounts_UserId",
                        column: x => x.UserId,
                        principalTable: "Accounts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "KeyOpenings",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    SessionId = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_KeyOpenings", x => x.Id);
                    table.ForeignKey(
                        name: "FK_KeyOpenings_CuppingSessions_SessionId",
                        column: x => x.SessionId,
                        principalTable: "CuppingSessions",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_KeyOpenings_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "PanelResults",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    SessionId = table.Column<Guid>(type: "uuid", nullable: false),
                    FormId = table.Column<Guid>(type: "uuid", nullable: false),
                    Sheets = table.Column<int>(type: "integer", nullable: false),
                    Parts = table.Column<int>(type: "integer", nullable: false),
                    ErrorFrom = table.Column<int>(type: "integer", nullable: false),
                    DegreesOfFreedom = table.Column<int>(type: "integer", nullable: false),
                    ResidualDeviationMillionths = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PanelResults", x => x.Id);
                    table.ForeignKey(
                        name: "FK_PanelResults_CuppingSessions_SessionId",
                        column: x => x.SessionId,
                        principalTable: "CuppingSessions",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Samples",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    Kind = table.Column<int>(type: "integer", nullable: false),
                    LabelCode = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    ReceivedOn = table.Column<DateOnly>(type: "date", nullable: false),
                    Note = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    WeightMicrograms = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Samples", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Samples_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Offers",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    SupplierId = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    Ref = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Bags = table.Column<int>(type: "integer", nullable: true),
                    Incoterm = table.Column<int>(type: "integer", nullable: true),
                    Place = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    ValidUntil = table.Column<DateOnly>(type: "date", nullable: true),
                    Availability = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    AvailableFrom = table.Column<DateOnly>(type: "date", nullable: true),
                    State = table.Column<int>(type: "integer", nullable: false),
                    ListId = table.Column<Guid>(type: "uuid", nullable: true),
                    FirstOfferedOn = table.Column<DateOnly>(type: "date", nullable: false),
                    RevisedOn = table.Column<DateOnly>(type: "date", nullable: false),
                    SearchText = table.Column<string>(type: "text", nullable: false),
                    BagWeightMicrograms = table.Column<long>(type: "bigint", nullable: true),
                    DifferentialMonth = table.Column<string>(type: "character varying(9)", maxLength: 9, nullable: true),
                    DifferentialQuotedTenThousandths = table.Column<long>(type: "bigint", nullable: true),
                    PriceCurrency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: true),
                    PriceMillionths = table.Column<long>(type: "bigint", nullable: true),
                    PriceNanosPerKilogram = table.Column<long>(type: "bigint", nullable: true),
                    PriceUnit = table.Column<int>(type: "integer", nullable: true),
                    QuantityMicrograms = table.Column<long>(type: "bigint", nullable: false),
                    StatedScoreMillionths = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Offers", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Offers_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Offers_OfferLists_ListId",
                        column: x => x.ListId,
                        principalTable: "OfferLists",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Offers_Suppliers_SupplierId",
                        column: x => x.SupplierId,
                        principalTable: "Suppliers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "CupperEffects",
                columns: table => new
                {
                    CupperKey = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    PanelResultId = table.Column<Guid>(type: "uuid", nullable: false),
                    CupperName = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    Sheets = table.Column<int>(type: "integer", nullable: false),
                    EffectMillionths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CupperEffects", x => new { x.PanelResultId, x.CupperKey });
                    table.ForeignKey(
                        name: "FK_CupperEffects_PanelResults_PanelResultId",
                        column: x => x.PanelResultId,
                        principalTable: "PanelResults",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "GreenGrades",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    SampleId = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    GradedOn = table.Column<DateOnly>(type: "date", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: true),
                    MoistureMethod = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: true),
                    DensityGramsPerLitre = table.Column<int>(type: "integer", nullable: true),
                    Scheme = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: true),
                    Fractions = table.Column<int>(type: "integer", nullable: false),
                    Quakers = table.Column<int>(type: "integer", nullable: true),
                    Note = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    Category1Hundredths = table.Column<int>(type: "integer", nullable: true),
                    Category2Hundredths = table.Column<int>(type: "integer", nullable: true),
                    ExportDefectsHundredths = table.Column<int>(type: "integer", nullable: true),
                    MoistureTenThousandths = table.Column<long>(type: "bigint", nullable: true),
                    RoastedWeightMicrograms = table.Column<long>(type: "bigint", nullable: true),
                    SampleWeightMicrograms = table.Column<long>(type: "bigint", nullable: false),
                    WaterActivityTenThousandths = table.Column<int>(type: "integer", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_GreenGrades", x => x.Id);
                    table.ForeignKey(
                        name: "FK_GreenGrades_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_GreenGrades_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_GreenGrades_Samples_SampleId",
                        column: x => x.SampleId,
                        principalTable: "Samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "SampleResults",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    SessionId = table.Column<Guid>(type: "uuid", nullable: false),
                    FormId = table.Column<Guid>(type: "uuid", nullable: false),
                    HeldOn = table.Column<DateOnly>(type: "date", nullable: false),
                    SampleId = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    Position = table.Column<int>(type: "integer", nullable: false),
                    HoldsFor = table.Column<int>(type: "integer", nullable: false),
                    ErrorFrom = table.Column<int>(type: "integer", nullable: false),
                    DegreesOfFreedom = table.Column<int>(type: "integer", nullable: true),
                    Cuppers = table.Column<int>(type: "integer", nullable: false),
                    Sheets = table.Column<int>(type: "integer", nullable: false),
                    Part = table.Column<int>(type: "integer", nullable: false),
                    OwnVariance = table.Column<double>(type: "double precision", nullable: false),
                    Loadings = table.Column<double[]>(type: "double precision[]", nullable: false),
                    LevelVariance = table.Column<double>(type: "double precision", nullable: false),
                    PanelResultId = table.Column<Guid>(type: "uuid", nullable: false),
                    AnyCupperErrorMillionths = table.Column<long>(type: "bigint", nullable: false),
                    FittedMillionths = table.Column<long>(type: "bigint", nullable: false),
                    HighMillionths = table.Column<long>(type: "bigint", nullable: false),
                    LowMillionths = table.Column<long>(type: "bigint", nullable: false),
                    PlainMeanMillionths = table.Column<long>(type: "bigint", nullable: false),
                    StandardErrorMillionths = table.Column<long>(type: "bigint", nullable: false),
                    TheseCuppersErrorMillionths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SampleResults", x => x.Id);
                    table.ForeignKey(
                        name: "FK_SampleResults_CuppingForms_FormId",
                        column: x => x.FormId,
                        principalTable: "CuppingForms",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SampleResults_CuppingSessions_SessionId",
                        column: x => x.SessionId,
                        principalTable: "CuppingSessions",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SampleResults_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SampleResults_PanelResults_PanelResultId",
                        column: x => x.PanelResultId,
                        principalTable: "PanelResults",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SampleResults_Samples_SampleId",
                        column: x => x.SampleId,
                        principalTable: "Samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ScoreSheets",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    SessionId = table.Column<Guid>(type: "uuid", nullable: false),
                    SampleId = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    CupperId = table.Column<Guid>(type: "uuid", nullable: true),
                    CupperName = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false),
                    WrittenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    MarkHundredths = table.Column<int[]>(type: "integer[]", nullable: false),
                    GoodCups = table.Column<int[]>(type: "integer[]", nullable: false),
                    DeductedCups = table.Column<int[]>(type: "integer[]", nullable: false),
                    AverageTenThousandths = table.Column<int[]>(type: "integer[]", nullable: false),
                    Descriptors = table.Column<string[]>(type: "text[]", nullable: false),
                    Note = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    StatedTotalMillionths = table.Column<long>(type: "bigint", nullable: true),
                    TotalMillionths = table.Column<long>(type: "bigint", nullable: false),
                    UnroundedMillionths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ScoreSheets", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ScoreSheets_CuppingSessions_SessionId",
                        column: x => x.SessionId,
                        principalTable: "CuppingSessions",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_ScoreSheets_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ScoreSheets_People_CupperId",
                        column: x => x.CupperId,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_ScoreSheets_Samples_SampleId",
                        column: x => x.SampleId,
                        principalTable: "Samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "SessionSamples",
                columns: table => new
                {
                    SampleId = table.Column<Guid>(type: "uuid", nullable: false),
                    SessionId = table.Column<Guid>(type: "uuid", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    Position = table.Column<int>(type: "integer", nullable: false),
                    Code = table.Column<string>(type: "character varying(8)", maxLength: 8, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SessionSamples", x => new { x.SessionId, x.SampleId });
                    table.ForeignKey(
                        name: "FK_SessionSamples_CuppingSessions_SessionId",
                        column: x => x.SessionId,
                        principalTable: "CuppingSessions",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SessionSamples_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SessionSamples_Samples_SampleId",
                        column: x => x.SampleId,
                        principalTable: "Samples",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Decisions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    LotId = table.Column<Guid>(type: "uuid", nullable: false),
                    OfferId = table.Column<Guid>(type: "uuid", nullable: false),
                    Outcome = table.Column<int>(type: "integer", nullable: false),
                    Advised = table.Column<int>(type: "integer", nullable: false),
                    Reason = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    Note = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Rules = table.Column<string>(type: "text", nullable: false),
                    Figures = table.Column<string>(type: "text", nullable: false),
                    WithdrawnBecause = table.Column<string>(type: "character varying(2000)", maxLength: 2000, nullable: true),
                    WithdrawnBy = table.Column<Guid>(type: "uuid", nullable: true),
                    WithdrawnAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    QuantityMicrograms = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Decisions", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Decisions_Lots_LotId",
                        column: x => x.LotId,
                        principalTable: "Lots",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Decisions_Offers_OfferId",
                        column: x => x.OfferId,
                        principalTable: "Offers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Decisions_People_By",
                        column: x => x.By,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "OfferPrices",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    OfferId = table.Column<Guid>(type: "uuid", nullable: false),
                    ListId = table.Column<Guid>(type: "uuid", nullable: true),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    State = table.Column<int>(type: "integer", nullable: false),
                    DifferentialMonth = table.Column<string>(type: "character varying(9)", maxLength: 9, nullable: true),
                    DifferentialQuotedTenThousandths = table.Column<long>(type: "bigint", nullable: true),
                    PriceCurrency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: true),
                    PriceMillionths = table.Column<long>(type: "bigint", nullable: true),
                    PriceNanosPerKilogram = table.Column<long>(type: "bigint", nullable: true),
                    PriceUnit = table.Column<int>(type: "integer", nullable: true),
                    QuantityMicrograms = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OfferPrices", x => x.Id);
                    table.ForeignKey(
                        name: "FK_OfferPrices_OfferLists_ListId",
                        column: x => x.ListId,
                        principalTable: "OfferLists",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_OfferPrices_Offers_OfferId",
                        column: x => x.OfferId,
                        principalTable: "Offers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "SetAsideRows",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    ListId = table.Column<Guid>(type: "uuid", nullable: false),
                    RowNumber = table.Column<int>(type: "integer", nullable: false),
                    Sheet = table.Column<string>(type: "text", nullable: true),
                    Cells = table.Column<string>(type: "text", nullable: false),
                    Column = table.Column<string>(type: "text", nullable: true),
                    Reason = table.Column<string>(type: "text", nullable: false),
                    MendedBy = table.Column<Guid>(type: "uuid", nullable: true),
                    MendedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    OfferId = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SetAsideRows", x => x.Id);
                    table.ForeignKey(
                        name: "FK_SetAsideRows_OfferLists_ListId",
                        column: x => x.ListId,
                        principalTable: "OfferLists",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_SetAsideRows_Offers_OfferId",
                        column: x => x.OfferId,
                        principalTable: "Offers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_SetAsideRows_People_MendedBy",
                        column: x => x.MendedBy,
                        principalTable: "People",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "DefectCounts",
                columns: table => new
                {
                    Kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    GreenGradeId = table.Column<Guid>(type: "uuid", nullable: false),
                    Beans = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DefectCounts", x => new { x.GreenGradeId, x.Kind });
                    table.ForeignKey(
                        name: "FK_DefectCounts_GreenGrades_GreenGradeId",
                        column: x => x.GreenGradeId,
                        principalTable: "GreenGrades",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ScreenShares",
                columns: table => new
                {
                    Screen = table.Column<int>(type: "integer", nullable: false),
                    GreenGradeId = table.Column<Guid>(type: "uuid", nullable: false),
                    RetainedTenThousandths = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ScreenShares", x => new { x.GreenGradeId, x.Screen });
                    table.ForeignKey(
                        name: "FK_ScreenShares_GreenGrades_GreenGradeId",
                        column: x => x.GreenGradeId,
                        principalTable: "GreenGrades",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_AccountClaims_UserId",
                table: "AccountClaims",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "IX_AccountLogins_UserId",
                table: "AccountLogins",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "IX_AccountPasskeys_UserId",
                table: "AccountPasskeys",
                column: "UserId");

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                table: "Accounts",
                column: "NormalizedEmail");

            migrationBuilder.CreateIndex(
                name: "IX_Accounts_PersonId",
                table: "Accounts",
                column: "PersonId");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                table: "Accounts",
                column: "NormalizedUserName",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ApiTokens_Hash",
                table: "ApiTokens",
                column: "Hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ApiTokens_OwnerId",
                table: "ApiTokens",
                column: "OwnerId");

            migrationBuilder.CreateIndex(
                name: "IX_Attachments_About_AboutId",
                table: "Attachments",
                columns: new[] { "About", "AboutId" });

            migrationBuilder.CreateIndex(
                name: "IX_Attachments_By",
                table: "Attachments",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_Attachments_StoredFileId",
                table: "Attachments",
                column: "StoredFileId");

            migrationBuilder.CreateIndex(
                name: "IX_BuyingRules_Name",
                table: "BuyingRules",
                column: "Name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_BuyingRulesRevisions_RulesId_Number",
                table: "BuyingRulesRevisions",
                columns: new[] { "RulesId", "Number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Changes_At",
                table: "Changes",
                column: "At");

            migrationBuilder.CreateIndex(
                name: "IX_Changes_By_At",
                table: "Changes",
                columns: new[] { "By", "At" });

            migrationBuilder.CreateIndex(
                name: "IX_Changes_RecordKind_RecordId_At",
                table: "Changes",
                columns: new[] { "RecordKind", "RecordId", "At" });

            migrationBuilder.CreateIndex(
                name: "IX_CuppingForms_Code_Edition_Revision",
                table: "CuppingForms",
                columns: new[] { "Code", "Edition", "Revision" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_CuppingSessions_ClosedBy",
                table: "CuppingSessions",
                column: "ClosedBy");

            migrationBuilder.CreateIndex(
                name: "IX_CuppingSessions_FormId",
                table: "CuppingSessions",
                column: "FormId");

            migrationBuilder.CreateIndex(
                name: "IX_CuppingSessions_HeldOn",
                table: "CuppingSessions",
                column: "HeldOn");

            migrationBuilder.CreateIndex(
                name: "IX_CuppingSessions_LaidOutBy",
                table: "CuppingSessions",
                column: "LaidOutBy");

            migrationBuilder.CreateIndex(
                name: "IX_CuppingSessions_SourceId",
                table: "CuppingSessions",
                column: "SourceId");

            migrationBuilder.CreateIndex(
                name: "IX_Decisions_At",
                table: "Decisions",
                column: "At");

            migrationBuilder.CreateIndex(
                name: "IX_Decisions_By",
                table: "Decisions",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_Decisions_LotId",
                table: "Decisions",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_Decisions_OfferId",
                table: "Decisions",
                column: "OfferId");

            migrationBuilder.CreateIndex(
                name: "IX_ExchangeRates_Kind_Currency_On",
                table: "ExchangeRates",
                columns: new[] { "Kind", "Currency", "On" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_FuturesQuotes_Month_On",
                table: "FuturesQuotes",
                columns: new[] { "Month", "On" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_GreenGrades_By",
                table: "GreenGrades",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_GreenGrades_LotId_GradedOn",
                table: "GreenGrades",
                columns: new[] { "LotId", "GradedOn" });

            migrationBuilder.CreateIndex(
                name: "IX_GreenGrades_SampleId",
                table: "GreenGrades",
                column: "SampleId");

            migrationBuilder.CreateIndex(
                name: "IX_Jobs_State",
                table: "Jobs",
                column: "State");

            migrationBuilder.CreateIndex(
                name: "IX_KeyOpenings_By",
                table: "KeyOpenings",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_KeyOpenings_SessionId",
                table: "KeyOpenings",
                column: "SessionId");

            migrationBuilder.CreateIndex(
                name: "IX_Lots_CountryCode",
                table: "Lots",
                column: "CountryCode");

            migrationBuilder.CreateIndex(
                name: "IX_Lots_ProcessMethodId",
                table: "Lots",
                column: "ProcessMethodId");

            migrationBuilder.CreateIndex(
                name: "IX_Lots_ProducerId",
                table: "Lots",
                column: "ProducerId");

            migrationBuilder.CreateIndex(
                name: "IX_Lots_SupplierId",
                table: "Lots",
                column: "SupplierId");

            migrationBuilder.CreateIndex(
                name: "IX_Notes_About_AboutId",
                table: "Notes",
                columns: new[] { "About", "AboutId" });

            migrationBuilder.CreateIndex(
                name: "IX_Notes_By",
                table: "Notes",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_OfferLists_By",
                table: "OfferLists",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_OfferLists_StoredFileId",
                table: "OfferLists",
                column: "StoredFileId");

            migrationBuilder.CreateIndex(
                name: "IX_OfferLists_SupplierId_FileHash",
                table: "OfferLists",
                columns: new[] { "SupplierId", "FileHash" });

            migrationBuilder.CreateIndex(
                name: "IX_OfferPrices_ListId",
                table: "OfferPrices",
                column: "ListId");

            migrationBuilder.CreateIndex(
                name: "IX_OfferPrices_OfferId",
                table: "OfferPrices",
                column: "OfferId");

            migrationBuilder.CreateIndex(
                name: "IX_Offers_ListId",
                table: "Offers",
                column: "ListId");

            migrationBuilder.CreateIndex(
                name: "IX_Offers_LotId",
                table: "Offers",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_Offers_State",
                table: "Offers",
                column: "State");

            migrationBuilder.CreateIndex(
                name: "IX_Offers_SupplierId_Ref",
                table: "Offers",
                columns: new[] { "SupplierId", "Ref" });

            migrationBuilder.CreateIndex(
                name: "IX_PanelResults_SessionId",
                table: "PanelResults",
                column: "SessionId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ProcessMethods_Name",
                table: "ProcessMethods",
                column: "Name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Producers_CountryCode",
                table: "Producers",
                column: "CountryCode");

            migrationBuilder.CreateIndex(
                name: "IX_Producers_Name",
                table: "Producers",
                column: "Name");

            migrationBuilder.CreateIndex(
                name: "IX_RouteLegs_RouteId",
                table: "RouteLegs",
                column: "RouteId");

            migrationBuilder.CreateIndex(
                name: "IX_Routes_Name",
                table: "Routes",
                column: "Name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_SampleResults_FormId",
                table: "SampleResults",
                column: "FormId");

            migrationBuilder.CreateIndex(
                name: "IX_SampleResults_LotId_FormId",
                table: "SampleResults",
                columns: new[] { "LotId", "FormId" });

            migrationBuilder.CreateIndex(
                name: "IX_SampleResults_PanelResultId",
                table: "SampleResults",
                column: "PanelResultId");

            migrationBuilder.CreateIndex(
                name: "IX_SampleResults_SampleId",
                table: "SampleResults",
                column: "SampleId");

            migrationBuilder.CreateIndex(
                name: "IX_SampleResults_SessionId",
                table: "SampleResults",
                column: "SessionId");

            migrationBuilder.CreateIndex(
                name: "IX_Samples_LabelCode",
                table: "Samples",
                column: "LabelCode",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Samples_LotId",
                table: "Samples",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_ScoreSheets_CupperId",
                table: "ScoreSheets",
                column: "CupperId");

            migrationBuilder.CreateIndex(
                name: "IX_ScoreSheets_LotId",
                table: "ScoreSheets",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_ScoreSheets_SampleId",
                table: "ScoreSheets",
                column: "SampleId");

            migrationBuilder.CreateIndex(
                name: "IX_ScoreSheets_SessionId_SampleId_CupperId",
                table: "ScoreSheets",
                columns: new[] { "SessionId", "SampleId", "CupperId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_SessionSamples_LotId",
                table: "SessionSamples",
                column: "LotId");

            migrationBuilder.CreateIndex(
                name: "IX_SessionSamples_SampleId",
                table: "SessionSamples",
                column: "SampleId");

            migrationBuilder.CreateIndex(
                name: "IX_SessionSamples_SessionId_Code",
                table: "SessionSamples",
                columns: new[] { "SessionId", "Code" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_SetAsideRows_ListId",
                table: "SetAsideRows",
                column: "ListId");

            migrationBuilder.CreateIndex(
                name: "IX_SetAsideRows_MendedBy",
                table: "SetAsideRows",
                column: "MendedBy");

            migrationBuilder.CreateIndex(
                name: "IX_SetAsideRows_OfferId",
                table: "SetAsideRows",
                column: "OfferId");

            migrationBuilder.CreateIndex(
                name: "IX_StoredFiles_Sha256",
                table: "StoredFiles",
                column: "Sha256");

            migrationBuilder.CreateIndex(
                name: "IX_SupplierMappings_SupplierId_Headings",
                table: "SupplierMappings",
                columns: new[] { "SupplierId", "Headings" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Suppliers_CountryCode",
                table: "Suppliers",
                column: "CountryCode");

            migrationBuilder.CreateIndex(
                name: "IX_Suppliers_Name",
                table: "Suppliers",
                column: "Name",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AccountClaims");

            migrationBuilder.DropTable(
                name: "AccountLogins");

            migrationBuilder.DropTable(
                name: "AccountPasskeys");

            migrationBuilder.DropTable(
                name: "AccountTokens");

            migrationBuilder.DropTable(
                name: "ApiTokens");

            migrationBuilder.DropTable(
                name: "Attachments");

            migrationBuilder.DropTable(
                name: "BuyingRulesRevisions");

            migrationBuilder.DropTable(
                name: "Changes");

            migrationBuilder.DropTable(
                name: "CupperEffects");

            migrationBuilder.DropTable(
                name: "DataProtectionKeys");

            migrationBuilder.DropTable(
                name: "Decisions");

            migrationBuilder.DropTable(
                name: "DefectCounts");

            migrationBuilder.DropTable(
                name: "ExchangeRates");

            migrationBuilder.DropTable(
                name: "FuturesQuotes");

            migrationBuilder.DropTable(
                name: "Houses");

            migrationBuilder.DropTable(
                name: "Jobs");

            migrationBuilder.DropTable(
                name: "KeyOpenings");

            migrationBuilder.DropTable(
                name: "ListChecks");

            migrationBuilder.DropTable(
                name: "Notes");

            migrationBuilder.DropTable(
                name: "OfferPrices");

            migrationBuilder.DropTable(
                name: "RouteLegs");

            migrationBuilder.DropTable(
                name: "SampleResults");

            migrationBuilder.DropTable(
                name: "ScoreSheets");

            migrationBuilder.DropTable(
                name: "ScreenShares");

            migrationBuilder.DropTable(
                name: "SessionSamples");

            migrationBuilder.DropTable(
                name: "SetAsideRows");

            migrationBuilder.DropTable(
                name: "StoredBytes");

            migrationBuilder.DropTable(
                name: "SupplierMappings");

            migrationBuilder.DropTable(
                name: "Accounts");

            migrationBuilder.DropTable(
                name: "BuyingRules");

            migrationBuilder.DropTable(
                name: "Routes");

            migrationBuilder.DropTable(
                name: "PanelResults");

            migrationBuilder.DropTable(
                name: "GreenGrades");

            migrationBuilder.DropTable(
                name: "Offers");

            migrationBuilder.DropTable(
                name: "CuppingSessions");

            migrationBuilder.DropTable(
                name: "Samples");

            migrationBuilder.DropTable(
                name: "OfferLists");

            migrationBuilder.DropTable(
                name: "CuppingForms");

            migrationBuilder.DropTable(
                name: "Lots");

            migrationBuilder.DropTable(
                name: "People");

            migrationBuilder.DropTable(
                name: "StoredFiles");

            migrationBuilder.DropTable(
                name: "ProcessMethods");

            migrationBuilder.DropTable(
                name: "Producers");

            migrationBuilder.DropTable(
                name: "Suppliers");

            migrationBuilder.DropTable(
                name: "Countries");
        }
    }
}
