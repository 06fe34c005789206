using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Cupping;

/// <summary>What a table works by, and the sheets that are being written at it.</summary>
internal sealed class TableConfiguration :
    IEntityTypeConfiguration<TastingProtocol>, IEntityTypeConfiguration<DescriptiveForm>, IEntityTypeConfiguration<CuppingHabits>,
    IEntityTypeConfiguration<Descriptor>,
    IEntityTypeConfiguration<SheetDraft>, IEntityTypeConfiguration<DraftChange>
{
    public void Configure(EntityTypeBuilder<TastingProtocol> builder)
    {
        builder.Property(protocol => protocol.Id).ValueGeneratedNever();
        builder.Property(protocol => protocol.Name).HasMaxLength(200);
        builder.Property(protocol => protocol.Reason).HasMaxLength(500);
        builder.Property(protocol => protocol.Steps).HasConversion(Json.Of<IReadOnlyList<TastingStep>>(), Json.Comparer<IReadOnlyList<TastingStep>>());
        builder.HasIndex(protocol => new { protocol.Name, protocol.Revision }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<DescriptiveForm> builder)
    {
        builder.Property(form => form.Id).ValueGeneratedNever();
        builder.Property(form => form.Name).HasMaxLength(200);
        builder.Property(form => form.Edition).HasMaxLength(20);
        builder.Property(form => form.Reason).HasMaxLength(500);
        builder.Property(form => form.Rules).HasConversion(Json.Of<DescriptiveRules>(), Json.Comparer<DescriptiveRules>());
        builder.HasIndex(form => new { form.Name, form.Edition, form.Revision }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<CuppingHabits> builder)
    {
        builder.Property(habits => habits.Id).ValueGeneratedNever();
        builder.Property(habits => habits.Water).HasMaxLength(200);
    }

    public void Configure(EntityTypeBuilder<Descriptor> builder)
    {
        builder.Property(descriptor => descriptor.Id).ValueGeneratedNever();
        builder.Property(descriptor => descriptor.Word).HasMaxLength(60);
        builder.Property(descriptor => descriptor.Family).HasMaxLength(60);
        builder.HasIndex(descriptor => descriptor.Word).IsUnique();
    }

    public void Configure(EntityTypeBuilder<SheetDraft> builder)
    {
        builder.ToTable("SheetDrafts");
        builder.Property(draft => draft.Id).ValueGeneratedNever();
        builder.Property(draft => draft.Code).HasMaxLength(8);
        builder.Property(draft => draft.ChangeCount).IsConcurrencyToken();
        builder.Property(draft => draft.Values).HasConversion(Json.Of<IReadOnlyDictionary<string, string>>(), Json.Comparer<IReadOnlyDictionary<string, string>>());
        builder.HasIndex(draft => new { draft.SessionId, draft.CupperId, draft.Code }).IsUnique();
        builder.HasOne<CuppingSession>().WithMany().HasForeignKey(draft => draft.SessionId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Person>().WithMany().HasForeignKey(draft => draft.CupperId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(draft => draft.Changes).WithOne().HasForeignKey(change => change.DraftId);
    }

    public void Configure(EntityTypeBuilder<DraftChange> builder)
    {
        builder.ToTable("DraftChanges");
        builder.Property(change => change.Key).ValueGeneratedNever();
        builder.Property(change => change.DraftId).ValueGeneratedNever();
        // The key first: a change that arrives again is found by it.
        builder.HasKey(change => new { change.Key, change.DraftId });
    }
}
