using GreenLedger.Data.Cupping;
using GreenLedger.Domain.Grading;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Grading;

internal sealed class GreenGradeConfiguration
    : IEntityTypeConfiguration<GreenGrade>, IEntityTypeConfiguration<DefectCount>, IEntityTypeConfiguration<ScreenShare>, IEntityTypeConfiguration<GradeLimit>,
    IEntityTypeConfiguration<GradingHabits>, IEntityTypeConfiguration<SchemeRevision>, IEntityTypeConfiguration<LimitsRevision>
{
    private const string Grade = "GreenGradeId";

    public void Configure(EntityTypeBuilder<GreenGrade> builder)
    {
        builder.Property(grade => grade.Id).ValueGeneratedNever();
        builder.Property(grade => grade.MoistureMethod).HasMaxLength(100);
        builder.Property(grade => grade.Scheme).HasMaxLength(40);
        builder.Property(grade => grade.Colour).HasMaxLength(60);
        builder.Property(grade => grade.Odour).HasMaxLength(100);
        builder.Property(grade => grade.QualityClass).HasMaxLength(100);
        builder.Property(grade => grade.Note).HasMaxLength(2000);
        builder.Property(grade => grade.WithdrawnBecause).HasMaxLength(500);
        builder.Ignore(grade => grade.QuakersIn100Grams);
        builder.Ignore(grade => grade.IsWithdrawn);
        // A withdrawn grade counts nowhere; the pages that show it ask for it by name.
        builder.HasQueryFilter(Withdrawn.Filter, grade => grade.WithdrawnAt == null);
        builder.HasOne<Person>().WithMany().HasForeignKey(grade => grade.WithdrawnBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(grade => new { grade.LotId, grade.GradedOn });
        builder.HasOne<Sample>().WithMany().HasForeignKey(grade => grade.SampleId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Lot>().WithMany().HasForeignKey(grade => grade.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(grade => grade.By).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(grade => grade.Defects).WithOne().HasForeignKey(Grade).IsRequired();
        builder.HasMany(grade => grade.Screens).WithOne().HasForeignKey(Grade).IsRequired();
        builder.HasMany(grade => grade.Limits).WithOne().HasForeignKey(Grade).IsRequired();
    }

    public void Configure(EntityTypeBuilder<GradeLimit> builder)
    {
        builder.ToTable("GradeLimits");
        builder.Property(limit => limit.Position).ValueGeneratedNever();
        builder.Property(limit => limit.Limits).HasMaxLength(100);
        builder.Property(limit => limit.Name).HasMaxLength(100);
        builder.Property(limit => limit.Found).HasMaxLength(100);
        builder.Property(limit => limit.Limit).HasMaxLength(100);
        builder.HasKey(Grade, nameof(GradeLimit.Position));
    }

    public void Configure(EntityTypeBuilder<GradingHabits> builder)
    {
        builder.Property(habits => habits.Id).ValueGeneratedNever();
        builder.Property(habits => habits.MoistureMethod).HasMaxLength(100);
    }

    public void Configure(EntityTypeBuilder<SchemeRevision> builder)
    {
        builder.Property(one => one.Id).ValueGeneratedNever();
        builder.Property(one => one.Code).HasMaxLength(40);
        builder.Property(one => one.Reason).HasMaxLength(500);
        builder.Property(one => one.Scheme).HasConversion(Json.Of<DefectScheme>(), Json.Comparer<DefectScheme>());
        builder.HasIndex(one => new { one.Code, one.Revision }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<LimitsRevision> builder)
    {
        builder.Property(one => one.Id).ValueGeneratedNever();
        builder.Property(one => one.Code).HasMaxLength(40);
        builder.Property(one => one.Reason).HasMaxLength(500);
        builder.Property(one => one.Limits).HasConversion(Json.Of<PhysicalLimits>(), Json.Comparer<PhysicalLimits>());
        builder.HasIndex(one => new { one.Code, one.Revision }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<DefectCount> builder)
    {
        builder.ToTable("DefectCounts");
        builder.Property(count => count.Kind).HasMaxLength(40).ValueGeneratedNever();
        builder.HasKey(Grade, nameof(DefectCount.Kind));
    }

    public void Configure(EntityTypeBuilder<ScreenShare> builder)
    {
        builder.ToTable("ScreenShares");
        builder.Property(share => share.Screen).ValueGeneratedNever();
        builder.HasKey(Grade, nameof(ScreenShare.Screen));
    }
}
