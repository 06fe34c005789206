using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Cupping;

internal sealed class PanelResultConfiguration :
    IEntityTypeConfiguration<PanelResult>, IEntityTypeConfiguration<SampleResult>, IEntityTypeConfiguration<CupperEffect>,
    IEntityTypeConfiguration<DiscussedScore>
{
    private const string Panel = "PanelResultId";

    public void Configure(EntityTypeBuilder<PanelResult> builder)
    {
        builder.Property(result => result.Id).ValueGeneratedNever();
        builder.Property(result => result.WeightRule).HasMaxLength(400);
        builder.HasMany(result => result.Samples).WithOne().HasForeignKey(Panel).IsRequired();
        builder.HasMany(result => result.Cuppers).WithOne().HasForeignKey(Panel).IsRequired();
        builder.HasMany(result => result.Discussed).WithOne().HasForeignKey(Panel).IsRequired();
    }

    public void Configure(EntityTypeBuilder<SampleResult> builder)
    {
        builder.Property(result => result.Id).ValueGeneratedNever();
        builder.PrimitiveCollection(result => result.Loadings);
        builder.HasIndex(result => new { result.LotId, result.FormId });
        builder.HasOne<Sample>().WithMany().HasForeignKey(result => result.SampleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(result => result.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<CuppingSession>().WithMany().HasForeignKey(result => result.SessionId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<CuppingForm>().WithMany().HasForeignKey(result => result.FormId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<CupperEffect> builder)
    {
        builder.ToTable("CupperEffects");
        builder.Property(effect => effect.CupperKey).HasMaxLength(200).ValueGeneratedNever();
        builder.Property(effect => effect.CupperName).HasMaxLength(200);
        // Results from before cuppers could count less were fitted with everyone alike.
        builder.Property(effect => effect.Weight).HasDefaultValue(1.0);
        builder.Property(effect => effect.WeightReason).HasMaxLength(200);
        builder.HasKey(Panel, nameof(CupperEffect.CupperKey));
    }

    public void Configure(EntityTypeBuilder<DiscussedScore> builder)
    {
        builder.ToTable("DiscussedScores");
        builder.Property(discussed => discussed.Id).ValueGeneratedNever();
        builder.Property(discussed => discussed.Reason).HasMaxLength(500);
        builder.Property(discussed => discussed.WithdrawnBecause).HasMaxLength(500);
        builder.Ignore(discussed => discussed.IsWithdrawn);
        builder.HasOne<Person>().WithMany().HasForeignKey(discussed => discussed.WithdrawnBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Sample>().WithMany().HasForeignKey(discussed => discussed.SampleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(discussed => discussed.By).OnDelete(DeleteBehavior.Restrict);
    }
}
