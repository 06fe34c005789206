using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Identity;

namespace GreenLedger.Web.People;

/// <summary>Gives people an account and a password; what Identity refuses becomes a broken rule beside its field.</summary>
public sealed class Accounts(LedgerContext db, UserManager<Account> accounts)
{
    public async Task<Account> AddAsync(Person person, string email, string password)
    {
        db.People.Add(person);
        var account = new Account { UserName = email.Trim(), Email = email.Trim(), PersonId = person.Id };
        Require(await accounts.CreateAsync(account, password));
        return account;
    }

    /// <summary>Replaces the password without asking for the old one: an administrator's act.</summary>
    public async Task SetPasswordAsync(Account account, string password)
    {
        var token = await accounts.GeneratePasswordResetTokenAsync(account);
        Require(await accounts.ResetPasswordAsync(account, token, password));
        await accounts.SetLockoutEndDateAsync(account, null);
    }

    public async Task ChangePasswordAsync(Account account, string old, string password) =>
        Require(await accounts.ChangePasswordAsync(account, old, password));

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
                nameof(IdentityErrorDescriber.PasswordMismatch) => ("This is not your present password.", "OldPassword"),
                _ => (error.Description, null),
            };
            throw new RuleBrokenException(message, field);
        }
    }
}
