using GreenLedger.Domain.Offers;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Offers;

internal sealed class ListChecksConfiguration : IEntityTypeConfiguration<ListChecks>
{
    public void Configure(EntityTypeBuilder<ListChecks> builder) =>
        builder.Property(checks => checks.Id).ValueGeneratedNever();
}
