using GreenLedger.Domain.Due;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Due;

internal sealed class DueConfiguration : IEntityTypeConfiguration<DueHabits>
{
    public void Configure(EntityTypeBuilder<DueHabits> builder)
    {
        builder.Property(habits => habits.Id).ValueGeneratedNever();
        var usual = new DueHabits();
        builder.Property(habits => habits.PastDays).HasDefaultValue(usual.PastDays).ValueGeneratedNever();
        builder.Property(habits => habits.ApprovalDays).HasDefaultValue(usual.ApprovalDays).ValueGeneratedNever();
    }
}
