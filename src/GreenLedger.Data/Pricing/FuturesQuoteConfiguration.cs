using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Pricing;

internal sealed class FuturesQuoteConfiguration : IEntityTypeConfiguration<FuturesQuote>
{
    public void Configure(EntityTypeBuilder<FuturesQuote> builder)
    {
        builder.Property(quote => quote.Id).ValueGeneratedNever();
        builder.Property(quote => quote.Source).HasMaxLength(200);
        builder.HasIndex(quote => new { quote.Month, quote.On }).IsUnique();
    }
}
