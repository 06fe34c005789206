using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.People;

internal sealed class AccountConfiguration : IEntityTypeConfiguration<Account>
{
    public void Configure(EntityTypeBuilder<Account> builder)
    {
        builder.ToTable("Accounts");
        builder.Property(account => account.PhoneNumber).HasMaxLength(256);
        builder.HasOne<Person>().WithMany().HasForeignKey(account => account.PersonId).OnDelete(DeleteBehavior.Restrict);
    }
}
