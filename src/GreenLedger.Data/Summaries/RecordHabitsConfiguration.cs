using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Summaries;

internal sealed class RecordHabitsConfiguration : IEntityTypeConfiguration<RecordHabits>
{
    public void Configure(EntityTypeBuilder<RecordHabits> builder)
    {
        builder.Property(habits => habits.Id).ValueGeneratedNever();
        var usual = new RecordHabits();
        builder.Property(habits => habits.SeasonMonths).HasDefaultValue(usual.SeasonMonths).ValueGeneratedNever();
        builder.Property(habits => habits.SeasonLots).HasDefaultValue(usual.SeasonLots).ValueGeneratedNever();
        builder.Property(habits => habits.SeasonSuppliers).HasDefaultValue(usual.SeasonSuppliers).ValueGeneratedNever();
    }
}
