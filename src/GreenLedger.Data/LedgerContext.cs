using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.Archive;
using GreenLedger.Domain.Arrivals;
using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Contracts;
using GreenLedger.Domain.Costs;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Due;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Pricing;
using GreenLedger.Domain.Roasting;
using GreenLedger.Domain.Samples;
using GreenLedger.Domain.Shipments;
using GreenLedger.Domain.Stock;
using GreenLedger.Domain.Summaries;
using GreenLedger.Domain.Trace;
using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;

namespace GreenLedger.Data;

/// <summary>
/// The ledger's one model. It is stored through <see cref="SqliteLedgerContext"/> (the embedded default) or
/// <see cref="PostgresLedgerContext"/> (many nodes); nothing else differs between the two.
/// </summary>
public abstract class LedgerContext(DbContextOptions options)
    : IdentityUserContext<Account, Guid>(options), IDataProtectionKeyContext
{
    public DbSet<ArchiveTaking> ArchiveTakings => Set<ArchiveTaking>();

    public DbSet<Attachment> Attachments => Set<Attachment>();

    public DbSet<Change> Changes => Set<Change>();

    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    public DbSet<Erasure> Erasures => Set<Erasure>();

    public DbSet<House> Houses => Set<House>();

    public DbSet<Message> Messages => Set<Message>();

    public DbSet<Note> Notes => Set<Note>();

    public DbSet<Person> People => Set<Person>();

    public DbSet<ApiToken> ApiTokens => Set<ApiToken>();

    public DbSet<StoredFile> StoredFiles => Set<StoredFile>();

    public DbSet<Country> Countries => Set<Country>();

    public DbSet<Producer> Producers => Set<Producer>();

    public DbSet<Plot> Plots => Set<Plot>();

    public DbSet<ProcessMethod> ProcessMethods => Set<ProcessMethod>();

    public DbSet<Supplier> Suppliers => Set<Supplier>();

    public DbSet<SupplierContact> SupplierContacts => Set<SupplierContact>();

    public DbSet<SupplierMapping> SupplierMappings => Set<SupplierMapping>();

    public DbSet<Lot> Lots => Set<Lot>();

    public DbSet<DueDiligence> DueDiligences => Set<DueDiligence>();

    public DbSet<DiligenceHabits> DiligenceHabits => Set<DiligenceHabits>();

    public DbSet<Offer> Offers => Set<Offer>();

    public DbSet<OfferPrice> OfferPrices => Set<OfferPrice>();

    public DbSet<OfferList> OfferLists => Set<OfferList>();

    public DbSet<SetAsideRow> SetAsideRows => Set<SetAsideRow>();

    public DbSet<Job> Jobs => Set<Job>();

    public DbSet<ExchangeRate> ExchangeRates => Set<ExchangeRate>();

    public DbSet<FuturesQuote> FuturesQuotes => Set<FuturesQuote>();

    public DbSet<Route> Routes => Set<Route>();

    public DbSet<BuyingRules> BuyingRules => Set<BuyingRules>();

    public DbSet<Decision> Decisions => Set<Decision>();

    public DbSet<Contract> Contracts => Set<Contract>();

    public DbSet<ContractLot> ContractLots => Set<ContractLot>();

    public DbSet<StandardForm> StandardForms => Set<StandardForm>();

    public DbSet<FixingHabits> FixingHabits => Set<FixingHabits>();

    public DbSet<ExchangeHoliday> ExchangeHolidays => Set<ExchangeHoliday>();

    public DbSet<Shipment> Shipments => Set<Shipment>();

    public DbSet<DocumentRule> DocumentRules => Set<DocumentRule>();

    public DbSet<Arrival> Arrivals => Set<Arrival>();

    public DbSet<Claim> Claims => Set<Claim>();

    public DbSet<ArrivalHabits> ArrivalHabits => Set<ArrivalHabits>();

    public DbSet<RecordHabits> RecordHabits => Set<RecordHabits>();

    public DbSet<DueHabits> DueHabits => Set<DueHabits>();

    public DbSet<DueMail> DueMails => Set<DueMail>();

    public DbSet<CalendarFeed> CalendarFeeds => Set<CalendarFeed>();

    public DbSet<FeedbackCopy> FeedbackCopies => Set<FeedbackCopy>();

    public DbSet<QualityBands> QualityBands => Set<QualityBands>();

    public DbSet<CostPosting> CostPostings => Set<CostPosting>();

    public DbSet<Warehouse> Warehouses => Set<Warehouse>();

    public DbSet<Holding> Holdings => Set<Holding>();

    public DbSet<Movement> Movements => Set<Movement>();

    public DbSet<Reservation> Reservations => Set<Reservation>();

    public DbSet<Purpose> Purposes => Set<Purpose>();

    public DbSet<StockCount> StockCounts => Set<StockCount>();

    public DbSet<StockHabits> StockHabits => Set<StockHabits>();

    public DbSet<Certificate> Certificates => Set<Certificate>();

    public DbSet<CertificateHabits> CertificateHabits => Set<CertificateHabits>();

    public DbSet<MockRecall> MockRecalls => Set<MockRecall>();

    public DbSet<ExchangeNames> ExchangeNames => Set<ExchangeNames>();

    public DbSet<ListChecks> ListChecks => Set<ListChecks>();

    public DbSet<Sample> Samples => Set<Sample>();

    public DbSet<SampleHabits> SampleHabits => Set<SampleHabits>();

    public DbSet<GreenGrade> GreenGrades => Set<GreenGrade>();

    public DbSet<GradingHabits> GradingHabits => Set<GradingHabits>();

    public DbSet<SchemeRevision> SchemeRevisions => Set<SchemeRevision>();

    public DbSet<LimitsRevision> LimitsRevisions => Set<LimitsRevision>();

    public DbSet<SampleRoast> SampleRoasts => Set<SampleRoast>();

    public DbSet<RoastProtocol> RoastProtocols => Set<RoastProtocol>();

    public DbSet<CuppingForm> CuppingForms => Set<CuppingForm>();

    public DbSet<CuppingHabits> CuppingHabits => Set<CuppingHabits>();

    public DbSet<TastingProtocol> TastingProtocols => Set<TastingProtocol>();

    public DbSet<DescriptiveForm> DescriptiveForms => Set<DescriptiveForm>();

    public DbSet<Descriptor> Descriptors => Set<Descriptor>();

    public DbSet<SheetDraft> SheetDrafts => Set<SheetDraft>();

    public DbSet<DraftChange> DraftChanges => Set<DraftChange>();

    public DbSet<CuppingSession> CuppingSessions => Set<CuppingSession>();

    public DbSet<ScoreSheet> ScoreSheets => Set<ScoreSheet>();

    public DbSet<PanelResult> PanelResults => Set<PanelResult>();

    public DbSet<SampleResult> SampleResults => Set<SampleResult>();

    /// <summary>Wholes that two people do not change at once in different parts: whoever changes a part changes the whole.</summary>
    private static readonly HashSet<Type> ChangedAsOne = [typeof(DueDiligence), typeof(GreenGrade), typeof(Route), typeof(Shipment), typeof(StockCount)];

    /// <summary>Passkeys are part of the accounts' tables.</summary>
    protected override Version SchemaVersion => IdentitySchemaVersions.Version3;

    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        CountVersions();
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    public override Task<int> SaveChangesAsync(
        bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        CountVersions();
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    /// <summary>
    /// Within a transaction: waits until nobody else has this turn, on whichever node. SQLite takes the one write lock when
    /// the transaction begins, so that there is nothing more to do.
    /// </summary>
    internal virtual Task TakeTurnAsync(Turn turn, CancellationToken cancellationToken) => Task.CompletedTask;

    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        base.ConfigureConventions(configurationBuilder);
        configurationBuilder.ComplexProperties<Weight>();
        configurationBuilder.ComplexProperties<Money>();
        configurationBuilder.ComplexProperties<PricePerWeight>();
        configurationBuilder.ComplexProperties<Mark>();
        configurationBuilder.ComplexProperties<Score>();
        configurationBuilder.ComplexProperties<Percent>();
        configurationBuilder.ComplexProperties<WaterActivity>();
        configurationBuilder.ComplexProperties<FullDefects>();
        configurationBuilder.ComplexProperties<ColourReading>();
        configurationBuilder.ComplexProperties<Differential>();
        configurationBuilder.Properties<Currency>().HaveConversion<CurrencyConverter>().HaveMaxLength(3);
        configurationBuilder.Properties<FuturesMonth>().HaveConversion<FuturesMonthConverter>().HaveMaxLength(9);
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcConverter>();
        foreach (var type in typeof(Id<>).Assembly.GetTypes().Where(type => type is { IsClass: true, IsGenericType: false }))
        {
            if (!type.IsAbstract)
            {
                configurationBuilder.Properties(typeof(Id<>).MakeGenericType(type))
                    .HaveConversion(typeof(IdConverter<>).MakeGenericType(type));
            }
        }
    }

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(LedgerContext).Assembly);
        ColumnNames.Apply(builder.Model);
    }

    /// <summary>Marks the whole of every changed part as changed, so that its version tells two people apart.</summary>
    private static void TouchWholes(List<EntityEntry> entries)
    {
        var wholes = entries.Where(entry => entry.State == EntityState.Unchanged && ChangedAsOne.Contains(entry.Metadata.ClrType))
            .ToDictionary(entry => (entry.Metadata, entry.Property("Id").CurrentValue!));
        if (wholes.Count == 0)
        {
            return;
        }

        foreach (var part in entries.Where(entry => entry.State is EntityState.Added or EntityState.Modified or EntityState.Deleted))
        {
            var tie = part.Metadata.GetForeignKeys().FirstOrDefault(key => key.PrincipalToDependent is not null && ChangedAsOne.Contains(key.PrincipalEntityType.ClrType));
            if (tie is not null && part.Property(tie.Properties[0].Name).CurrentValue is { } id && wholes.TryGetValue((tie.PrincipalEntityType, id), out var whole))
            {
                whole.Property("Version").IsModified = true;
            }
        }
    }

    /// <summary>Rows that two people can change at once carry a version; a change that read an older one is refused.</summary>
    private void CountVersions()
    {
        var entries = ChangeTracker.Entries().ToList();
        TouchWholes(entries);
        foreach (var entry in entries)
        {
            if (entry.State == EntityState.Modified && entry.Metadata.FindProperty("Version") is { } version)
            {
                var property = entry.Property(version.Name);
                property.CurrentValue = (int)property.OriginalValue! + 1;
            }
        }
    }
}
