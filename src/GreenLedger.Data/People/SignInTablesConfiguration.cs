using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace GreenLedger.Data.People;

/// <summary>
/// The tables of accounts as Identity's third schema has them, passkeys among them. Stated here because Identity
/// takes its schema version from the services of a running application, which migrations and tests do not have
/// (seen with 10.0.15: the overridden SchemaVersion alone left the passkeys out).
/// </summary>
internal sealed class SignInTablesConfiguration :
    IEntityTypeConfiguration<IdentityUserPasskey<Guid>>,
    IEntityTypeConfiguration<IdentityUserLogin<Guid>>,
    IEntityTypeConfiguration<IdentityUserToken<Guid>>,
    IEntityTypeConfiguration<IdentityUserClaim<Guid>>
{
    private const int LongestKey = 128;

    public void Configure(EntityTypeBuilder<IdentityUserPasskey<Guid>> builder)
    {
        builder.ToTable("AccountPasskeys");
        builder.HasKey(passkey => passkey.CredentialId);
        builder.Property(passkey => passkey.CredentialId).HasMaxLength(1024);
        builder.OwnsOne(passkey => passkey.Data).ToJson();
        builder.HasOne<Account>().WithMany().HasForeignKey(passkey => passkey.UserId).IsRequired();
    }

    public void Configure(EntityTypeBuilder<IdentityUserLogin<Guid>> builder)
    {
        builder.ToTable("AccountLogins");
        builder.HasKey(login => new { login.LoginProvider, login.ProviderKey });
        builder.Property(login => login.LoginProvider).HasMaxLength(LongestKey);
        builder.Property(login => login.ProviderKey).HasMaxLength(LongestKey);
    }

    public void Configure(EntityTypeBuilder<IdentityUserToken<Guid>> builder)
    {
        builder.ToTable("AccountTokens");
        builder.HasKey(token => new { token.UserId, token.LoginProvider, token.Name });
        builder.Property(token => token.LoginProvider).HasMaxLength(LongestKey);
        builder.Property(token => token.Name).HasMaxLength(LongestKey);
    }

    public void Configure(EntityTypeBuilder<IdentityUserClaim<Guid>> builder) => builder.ToTable("AccountClaims");
}
