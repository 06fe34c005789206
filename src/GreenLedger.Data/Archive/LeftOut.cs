namespace GreenLedger.Data.Archive;

/// <summary>
/// What an archive does not hold (docs/decisions/0012): everything by which somebody signs in or reads without signing in. Whoever is
/// read back chooses a new password by an invitation, and makes tokens and calendar addresses anew.
/// </summary>
internal static class LeftOut
{
    /// <summary>Tables that are about nothing else; <c>DataProtectionKeys</c> belong to the nodes of one house.</summary>
    public static readonly IReadOnlySet<string> Tables = new HashSet<string>
    {
        "AccountClaims", "AccountLogins", "AccountPasskeys", "AccountTokens", "ApiTokens", "CalendarFeeds", "DataProtectionKeys",
    };

    /// <summary>Columns of an account, with what a new one has in them.</summary>
    public static readonly IReadOnlyDictionary<string, Func<object?>> Columns = new Dictionary<string, Func<object?>>
    {
        ["Accounts.PasswordHash"] = () => null,
        ["Accounts.SecurityStamp"] = () => Guid.NewGuid().ToString("N"),
        ["Accounts.ConcurrencyStamp"] = () => Guid.NewGuid().ToString(),
        ["Accounts.TwoFactorEnabled"] = () => false,
        ["Accounts.LockoutEnd"] = () => null,
        ["Accounts.AccessFailedCount"] = () => 0L,
    };
}
