using GreenLedger.Domain.Pricing;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Pricing;

internal sealed class RouteConfiguration : IEntityTypeConfiguration<Route>, IEntityTypeConfiguration<RouteLeg>
{
    public void Configure(EntityTypeBuilder<Route> builder)
    {
        builder.Property(route => route.Id).ValueGeneratedNever();
        builder.Property(route => route.Name).HasMaxLength(80);
        builder.Property(route => route.PortOfLoading).HasMaxLength(80);
        builder.Property(route => route.PortOfDestination).HasMaxLength(80);
        builder.Property(route => route.Warehouse).HasMaxLength(80);
        builder.Property(route => route.OriginCountry).HasMaxLength(2);
        builder.HasMany(route => route.Legs).WithOne().HasForeignKey("RouteId").IsRequired().OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(route => route.Name).IsUnique();
    }

    public void Configure(EntityTypeBuilder<RouteLeg> builder)
    {
        builder.ToTable("RouteLegs");
        builder.Property(leg => leg.Id).ValueGeneratedNever();
        builder.Property(leg => leg.Name).HasMaxLength(80);
    }
}
