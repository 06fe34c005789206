using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.People;

/// <summary>Gives people an account and a password; what Identity refuses becomes a broken rule beside its field.</summary>
public sealed class Accounts(LedgerContext db, UserManager<Account> accounts, TimeProvider clock)
{
    public async Task<Account> AddAsync(Person person, string email, string password)
    {
        var account = New(person, email);
        Require(await accounts.CreateAsync(account, password));
        return account;
    }

    /// <summary>An account without a password: its owner chooses one by the link that is handed over.</summary>
    public async Task<Account> InviteAsync(Person person, string email)
    {
        var account = New(person, email);
        Require(await accounts.CreateAsync(account));
        return account;
    }

    /// <summary>For whoever has none, as after reading a house back.</summary>
    public async Task GivePasswordAsync(Account account, string password) => Require(await accounts.AddPasswordAsync(account, password));

    public Task<Account?> FindAsync(Guid id) => accounts.FindByIdAsync(id.ToString());

    /// <summary>The code of a link that lets a person choose a password: once, within a day.</summary>
    public Task<string> LinkCodeAsync(Account account) => accounts.GeneratePasswordResetTokenAsync(account);

    /// <summary>By a link: whatever else opened the account until now, a passkey or a token, opens it no more.</summary>
    public async Task SetPasswordAsync(Account account, string code, string password)
    {
        Require(await accounts.ResetPasswordAsync(account, code, password));
        await accounts.SetLockoutEndDateAsync(account, null);
        foreach (var passkey in await accounts.GetPasskeysAsync(account))
        {
            Require(await accounts.RemovePasskeyAsync(account, passkey.CredentialId));
        }

        await RevokeTokensAsync(account.PersonId);
    }

    /// <summary>For whoever leaves: an account that is opened again has no token that still works.</summary>
    public async Task RevokeTokensAsync(Id<Person> owner)
    {
        foreach (var token in await db.ApiTokens.Where(token => token.OwnerId == owner && token.RevokedAt == null).ToListAsync())
        {
            token.Revoke(clock.GetUtcNow());
        }

        foreach (var feed in await db.CalendarFeeds.Where(feed => feed.OwnerId == owner && feed.RevokedAt == null).ToListAsync())
        {
            feed.Revoke(clock.GetUtcNow());
        }

        await db.SaveChangesAsync();
    }

    /// <summary>Signs the account out on every device, within a minute.</summary>
    public Task SignOutEverywhereAsync(Account account) => accounts.UpdateSecurityStampAsync(account);

    public async Task ChangePasswordAsync(Account account, string old, string password) =>
        Require(await accounts.ChangePasswordAsync(account, old, password));

    private Account New(Person person, string email)
    {
        db.People.Add(person);
        return new Account { UserName = email.Trim(), Email = email.Trim(), PersonId = person.Id };
    }

    private static void Require(IdentityResult result)
    {
        if (result.Errors.FirstOrDefault() is { } error)
        {
            var (message, field) = error.Code switch
            {
                nameof(IdentityErrorDescriber.DuplicateEmail) or nameof(IdentityErrorDescriber.DuplicateUserName) =>
                    ("Somebody has an account with this e-mail address already.", "Email"),
                nameof(IdentityErrorDescriber.InvalidEmail) or nameof(IdentityErrorDescriber.InvalidUserName) =>
                    ("This is not an e-mail address.", "Email"),
                nameof(IdentityErrorDescriber.PasswordTooShort) => ("A password has at least 12 characters.", "Password"),
                nameof(IdentityErrorDescriber.PasswordRequiresUniqueChars) =>
                    ("A password has at least 5 different characters.", "Password"),
                nameof(IdentityErrorDescriber.InvalidToken) =>
                    ("This link was used already or is older than a day: ask for a new one.", null),
                nameof(IdentityErrorDescriber.PasswordMismatch) => ("This is not your present password.", "OldPassword"),
                _ => (error.Description, null),
            };
            throw new RuleBrokenException(message, field);
        }
    }
}
