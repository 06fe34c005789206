using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Origins;

internal sealed class PlotConfiguration : IEntityTypeConfiguration<Plot>, IEntityTypeConfiguration<DueDiligence>, IEntityTypeConfiguration<LotPlot>
{
    public void Configure(EntityTypeBuilder<Plot> builder)
    {
        builder.Property(plot => plot.Id).ValueGeneratedNever();
        builder.Property(plot => plot.Name).HasMaxLength(200);
        builder.Property(plot => plot.CountryCode).HasMaxLength(2);
        builder.Ignore(plot => plot.Hectares).Ignore(plot => plot.Written);
        builder.HasOne<Producer>().WithMany().HasForeignKey(plot => plot.ProducerId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(plot => plot.ProducerId);
    }

    public void Configure(EntityTypeBuilder<DueDiligence> builder)
    {
        builder.ToTable("DueDiligences");
        builder.Property(held => held.Id).ValueGeneratedNever();
        builder.Property(held => held.Legality).HasMaxLength(2000);
        builder.Property(held => held.Deforestation).HasMaxLength(2000);
        builder.Property(held => held.Risk).HasMaxLength(2000);
        builder.Property(held => held.StatementReference).HasMaxLength(DueDiligence.MostReference);
        builder.Ignore(held => held.ReferenceDoubt);
        builder.Property(held => held.VerificationNumber).HasMaxLength(35);
        builder.HasIndex(held => held.LotId).IsUnique();
        builder.HasOne<Lot>().WithMany().HasForeignKey(held => held.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(held => held.Plots).WithOne().HasForeignKey("DueDiligenceId").IsRequired();
    }

    public void Configure(EntityTypeBuilder<LotPlot> builder)
    {
        builder.ToTable("LotPlots");
        builder.Property(one => one.Id).ValueGeneratedNever();
        builder.HasOne<Plot>().WithMany().HasForeignKey(one => one.PlotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex("DueDiligenceId", nameof(LotPlot.PlotId)).IsUnique();
    }
}
