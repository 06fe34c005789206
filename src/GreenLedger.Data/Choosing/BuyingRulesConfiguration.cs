using GreenLedger.Domain.Choosing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Choosing;

/// <summary>The terms are read and written whole and never asked about in SQL, so they are one JSON text.</summary>
internal sealed class BuyingRulesConfiguration : IEntityTypeConfiguration<BuyingRules>, IEntityTypeConfiguration<RulesRevision>
{
    public void Configure(EntityTypeBuilder<BuyingRules> builder)
    {
        builder.Property(rules => rules.Id).ValueGeneratedNever();
        builder.Property(rules => rules.Name).HasMaxLength(80);
        builder.Ignore(rules => rules.Terms);
        builder.HasMany(rules => rules.Revisions).WithOne().HasForeignKey(revision => revision.RulesId).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(rules => rules.Name).IsUnique();
    }

    public void Configure(EntityTypeBuilder<RulesRevision> builder)
    {
        builder.ToTable("BuyingRulesRevisions");
        builder.Property(revision => revision.Id).ValueGeneratedNever();
        builder.Property(revision => revision.Terms).HasConversion(
            terms => FrozenJson.Write(terms),
            text => FrozenJson.Read<RuleTerms>(text));
        builder.HasIndex(revision => new { revision.RulesId, revision.Number }).IsUnique();
    }
}
