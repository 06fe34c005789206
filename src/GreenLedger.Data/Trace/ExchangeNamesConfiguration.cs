using GreenLedger.Domain.Trace;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Trace;

internal sealed class ExchangeNamesConfiguration : IEntityTypeConfiguration<ExchangeNames>
{
    public void Configure(EntityTypeBuilder<ExchangeNames> builder)
    {
        builder.Property(names => names.Id).ValueGeneratedNever();
        builder.Property(names => names.WebAddress).HasMaxLength(200);
        builder.Property(names => names.CompanyPrefix).HasMaxLength(12);
        builder.Property(names => names.Gln).HasMaxLength(13);
        builder.Property(names => names.ItemReference).HasMaxLength(13);
    }
}
