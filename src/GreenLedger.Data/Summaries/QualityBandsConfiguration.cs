using GreenLedger.Domain.Choosing;
using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Summaries;

/// <summary>Bands are read and written whole and never asked about in SQL, so they are one JSON text.</summary>
internal sealed class QualityBandsConfiguration : IEntityTypeConfiguration<QualityBands>
{
    public void Configure(EntityTypeBuilder<QualityBands> builder)
    {
        builder.Property(bands => bands.Id).ValueGeneratedNever();
        builder.Property(bands => bands.Bands).HasConversion(
            bands => FrozenJson.Write(bands),
            text => FrozenJson.Read<IReadOnlyList<QualityBand>>(text),
            new ValueComparer<IReadOnlyList<QualityBand>>((one, other) => one!.SequenceEqual(other!), bands => bands.Count, bands => bands));
        builder.HasOne<CuppingForm>().WithMany().HasForeignKey(bands => bands.FormId).OnDelete(DeleteBehavior.Restrict);
    }
}
