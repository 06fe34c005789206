using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Pricing;

internal sealed class ExchangeRateConfiguration : IEntityTypeConfiguration<ExchangeRate>
{
    public void Configure(EntityTypeBuilder<ExchangeRate> builder)
    {
        builder.Property(rate => rate.Id).ValueGeneratedNever();
        builder.Property(rate => rate.Source).HasMaxLength(200);
        builder.HasIndex(rate => new { rate.Kind, rate.Currency, rate.On }).IsUnique();
    }
}
