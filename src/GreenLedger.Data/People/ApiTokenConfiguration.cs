using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.People;

internal sealed class ApiTokenConfiguration : IEntityTypeConfiguration<ApiToken>
{
    public void Configure(EntityTypeBuilder<ApiToken> builder)
    {
        builder.Property(token => token.Id).ValueGeneratedNever();
        builder.Property(token => token.Name).HasMaxLength(100);
        builder.Property(token => token.Hash).HasMaxLength(64);
        builder.HasIndex(token => token.Hash).IsUnique();
        builder.HasOne<Person>().WithMany().HasForeignKey(token => token.OwnerId).OnDelete(DeleteBehavior.Restrict);
    }
}
