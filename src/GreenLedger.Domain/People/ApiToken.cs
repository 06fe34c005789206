using System.Security.Cryptography;
using System.Text;

namespace GreenLedger.Domain.People;

/// <summary>
/// What a script shows instead of a password. Only a hash is kept, so that the token can be shown once and never again;
/// it acts with the roles that its owner has at that moment, until it is revoked.
/// </summary>
public sealed class ApiToken
{
    private ApiToken()
    {
        Name = Hash = "";
    }

    public ApiToken(Id<Person> owner, string name, string hash, DateTimeOffset at)
    {
        Id = Id<ApiToken>.New();
        OwnerId = owner;
        Name = Rule.Text(name, "What the token is for", 100, nameof(Name));
        Hash = hash;
        MadeAt = at;
    }

    public Id<ApiToken> Id { get; private set; }

    public Id<Person> OwnerId { get; private set; }

    /// <summary>What the token is for, in its owner's words.</summary>
    public string Name { get; private set; }

    /// <summary>As <see cref="HashOf"/> makes it.</summary>
    public string Hash { get; private set; }

    public DateTimeOffset MadeAt { get; private set; }

    /// <summary>To the minute.</summary>
    public DateTimeOffset? LastUsedAt { get; private set; }

    public DateTimeOffset? RevokedAt { get; private set; }

    /// <summary>Lower-case hexadecimal SHA-256 of the token.</summary>
    public static string HashOf(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));

    public void Use(DateTimeOffset at) => LastUsedAt = at;

    public void Revoke(DateTimeOffset at)
    {
        Rule.Require(RevokedAt is null, "This token is revoked already.");
        RevokedAt = at;
    }
}
