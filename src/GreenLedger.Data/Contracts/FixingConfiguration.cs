using GreenLedger.Domain.Contracts;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Contracts;

/// <summary>What the house states about the forms of the trade and the days of the markets.</summary>
internal sealed class FixingConfiguration :
    IEntityTypeConfiguration<StandardForm>, IEntityTypeConfiguration<FixingHabits>, IEntityTypeConfiguration<ExchangeHoliday>
{
    public void Configure(EntityTypeBuilder<StandardForm> builder)
    {
        builder.Property(form => form.Id).ValueGeneratedNever();
        builder.Property(form => form.Name).HasMaxLength(200);
        builder.Property(form => form.Edition).HasMaxLength(80);
        builder.Property(form => form.Arbitration).HasMaxLength(200);
        builder.HasIndex(form => new { form.Name, form.Edition }).IsUnique();
    }

    public void Configure(EntityTypeBuilder<FixingHabits> builder) =>
        builder.Property(habits => habits.Id).ValueGeneratedNever();

    public void Configure(EntityTypeBuilder<ExchangeHoliday> builder)
    {
        builder.Property(holiday => holiday.Id).ValueGeneratedNever();
        builder.Property(holiday => holiday.Name).HasMaxLength(80);
        builder.HasIndex(holiday => new { holiday.Market, holiday.On }).IsUnique();
    }
}
