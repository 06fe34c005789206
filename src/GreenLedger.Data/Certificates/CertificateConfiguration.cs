using GreenLedger.Domain.Certificates;
using GreenLedger.Domain.Offers;
using GreenLedger.Domain.Origins;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.Certificates;

internal sealed class CertificateConfiguration : IEntityTypeConfiguration<Certificate>, IEntityTypeConfiguration<CertificateHabits>
{
    public void Configure(EntityTypeBuilder<Certificate> builder)
    {
        builder.Property(certificate => certificate.Id).ValueGeneratedNever();
        builder.Property(certificate => certificate.Scheme).HasMaxLength(60);
        builder.Property(certificate => certificate.Number).HasMaxLength(80);
        builder.Property(certificate => certificate.Scope).HasMaxLength(500);
        builder.Property(certificate => certificate.IssuedBy).HasMaxLength(120);
        builder.Property(certificate => certificate.StandingReason).HasMaxLength(500);
        builder.HasIndex(certificate => certificate.Until);
        builder.HasOne<Supplier>().WithMany().HasForeignKey(certificate => certificate.SupplierId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Producer>().WithMany().HasForeignKey(certificate => certificate.ProducerId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Person>().WithMany().HasForeignKey(certificate => certificate.StandingBy).OnDelete(DeleteBehavior.Restrict);
    }

    public void Configure(EntityTypeBuilder<CertificateHabits> builder)
    {
        builder.ToTable("CertificateHabits");
        builder.Property(habits => habits.Id).ValueGeneratedNever();
        builder.Property(habits => habits.ByContractDay).HasMaxLength(200);
    }
}
