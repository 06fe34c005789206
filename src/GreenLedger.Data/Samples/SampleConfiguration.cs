using GreenLedger.Domain.Offers;
using GreenLedger.Domain.People;
using GreenLedger.Domain.Samples;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Samples;

internal sealed class SampleConfiguration
    : IEntityTypeConfiguration<Sample>, IEntityTypeConfiguration<SetBack>, IEntityTypeConfiguration<SampleHabits>
{
    private const string OfSample = "SampleId";

    public void Configure(EntityTypeBuilder<Sample> builder)
    {
        builder.Property(sample => sample.Id).ValueGeneratedNever();
        builder.Property(sample => sample.LabelCode).HasMaxLength(20);
        builder.Property(sample => sample.Courier).HasMaxLength(80);
        builder.Property(sample => sample.TrackingNumber).HasMaxLength(80);
        builder.Property(sample => sample.BagCondition).HasMaxLength(200);
        builder.Property(sample => sample.Note).HasMaxLength(2000);
        builder.Property(sample => sample.LeftBecause).HasMaxLength(500);
        builder.HasOne<Person>().WithMany().HasForeignKey(sample => sample.LeftBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasIndex(sample => sample.LabelCode).IsUnique();
        builder.HasOne<Lot>().WithMany().HasForeignKey(sample => sample.LotId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Supplier>().WithMany().HasForeignKey(sample => sample.AskedOf).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(sample => sample.AskedBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(sample => sample.SentBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(sample => sample.ReceivedBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(sample => sample.SetBacks).WithOne().HasForeignKey(OfSample).IsRequired();
    }

    public void Configure(EntityTypeBuilder<SetBack> builder)
    {
        builder.ToTable("SampleSetBacks");
        builder.Property(back => back.Number).ValueGeneratedNever();
        builder.HasKey(OfSample, nameof(SetBack.Number));
        builder.Property(back => back.Said).HasMaxLength(400);
        builder.Property(back => back.Reason).HasMaxLength(500);
        builder.HasOne<Person>().WithMany().HasForeignKey(back => back.StepBy).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(back => back.By).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<SampleHabits> builder) =>
        builder.Property(habits => habits.Id).ValueGeneratedNever();
}
