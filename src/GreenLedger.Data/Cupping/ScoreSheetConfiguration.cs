using GreenLedger.Domain.Cupping;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace GreenLedger.Data.Cupping;

internal sealed class ScoreSheetConfiguration : IEntityTypeConfiguration<ScoreSheet>, IEntityTypeConfiguration<EarlierSheet>
{
    public void Configure(EntityTypeBuilder<ScoreSheet> builder)
    {
        builder.Property(sheet => sheet.Id).ValueGeneratedNever();
        builder.Property(sheet => sheet.CupperName).HasMaxLength(200);
        builder.Property(sheet => sheet.Note).HasMaxLength(2000);
        builder.PrimitiveCollection(sheet => sheet.MarkHundredths);
        builder.PrimitiveCollection(sheet => sheet.GoodCups);
        builder.PrimitiveCollection(sheet => sheet.DeductedCups);
        builder.PrimitiveCollection(sheet => sheet.AverageTenThousandths);
        builder.PrimitiveCollection(sheet => sheet.Descriptors);
        builder.PrimitiveCollection(sheet => sheet.Cups);
        builder.Property(sheet => sheet.DefectName).HasMaxLength(60);
        builder.Property(sheet => sheet.Description).HasConversion((ValueConverter)Json.Of<SheetDescription>(), Json.Comparer<SheetDescription>());
        builder.HasMany(sheet => sheet.EarlierSheets).WithOne().HasForeignKey("SheetId").IsRequired();
        // Two devices of one cupper that hand in at the same moment: the second is refused by the database.
        builder.HasIndex(sheet => new { sheet.SessionId, sheet.SampleId, sheet.Repeat, sheet.CupperId }).IsUnique();
        builder.HasOne<Sample>().WithMany().HasForeignKey(sheet => sheet.SampleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(sheet => sheet.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(sheet => sheet.CupperId).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<EarlierSheet> builder)
    {
        builder.ToTable("EarlierSheets");
        builder.Property(sheet => sheet.Id).ValueGeneratedNever();
        builder.Property(sheet => sheet.Note).HasMaxLength(2000);
        builder.Property(sheet => sheet.Reason).HasMaxLength(500);
        builder.Property(sheet => sheet.DefectName).HasMaxLength(60);
        builder.Property(sheet => sheet.Description).HasConversion((ValueConverter)Json.Of<SheetDescription>(), Json.Comparer<SheetDescription>());
        builder.PrimitiveCollection(sheet => sheet.Cups);
        builder.PrimitiveCollection(sheet => sheet.MarkHundredths);
        builder.PrimitiveCollection(sheet => sheet.GoodCups);
        builder.PrimitiveCollection(sheet => sheet.DeductedCups);
        builder.PrimitiveCollection(sheet => sheet.Descriptors);
        builder.HasOne<Person>().WithMany().HasForeignKey(sheet => sheet.ReopenedBy).OnDelete(DeleteBehavior.Restrict);
    }
}
