using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.People;

internal sealed class HouseConfiguration : IEntityTypeConfiguration<House>
{
    public void Configure(EntityTypeBuilder<House> builder)
    {
        builder.Property(house => house.Id).ValueGeneratedNever();
        builder.Property(house => house.Name).HasMaxLength(200);
        // Houses from before there was a choice read their clocks in UTC.
        builder.Property(house => house.TimeZone).HasMaxLength(60).HasDefaultValue(ClockZone.Utc.Name).ValueGeneratedNever();
    }
}
