using GreenLedger.Domain.Origins;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Origins;

internal sealed class CountryConfiguration : IEntityTypeConfiguration<Country>
{
    public void Configure(EntityTypeBuilder<Country> builder)
    {
        builder.HasKey(country => country.Code);
        builder.Property(country => country.Code).HasMaxLength(2);
        builder.Property(country => country.Name).HasMaxLength(80);
        builder.PrimitiveCollection(country => country.OtherNames);
        builder.Property(country => country.IcoCode).HasMaxLength(3);
        builder.Property(country => country.Ports).HasMaxLength(200);
    }
}
