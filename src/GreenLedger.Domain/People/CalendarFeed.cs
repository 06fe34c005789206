namespace GreenLedger.Domain.People;

/// <summary>
/// A private address at which a calendar program reads what is due for one person. Only a hash of the address is kept, so that
/// it can be shown once; it tells what its owner's roles may read at that moment, until it is revoked.
/// </summary>
public sealed class CalendarFeed
{
    private CalendarFeed() => Hash = "";

    /// <param name="owner">Whose roles it obeys.</param>
    /// <param name="hash">As <see cref="ApiToken.HashOf"/> makes it of the secret part of the address.</param>
    /// <param name="at">When it was made.</param>
    public CalendarFeed(Id<Person> owner, string hash, DateTimeOffset at)
    {
        Id = Id<CalendarFeed>.New();
        (OwnerId, Hash, MadeAt) = (owner, hash, at);
    }

    public Id<CalendarFeed> Id { get; private set; }

    public Id<Person> OwnerId { get; private set; }

    public string Hash { get; private set; }

    public DateTimeOffset MadeAt { get; private set; }

    /// <summary>To the minute.</summary>
    public DateTimeOffset? LastReadAt { get; private set; }

    public DateTimeOffset? RevokedAt { get; private set; }

    public void Revoke(DateTimeOffset at)
    {
        Rule.Require(RevokedAt is null, "This address is revoked already.");
        RevokedAt = at;
    }
}
