using GreenLedger.Domain.Summaries;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Summaries;

internal sealed class RecordHabitsConfiguration : IEntityTypeConfiguration<RecordHabits>
{
    public void Configure(EntityTypeBuilder<RecordHabits> builder) => builder.Property(habits => habits.Id).ValueGeneratedNever();
}
