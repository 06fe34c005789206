using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;

namespace GreenLedger.SeedDemo.People;

/// <summary>Gives the cast its accounts, and says which of them still open the door.</summary>
internal static class Entrance
{
    public static async Task OpenAsync(LedgerContext db, Cast cast, DateTimeOffset now, CancellationToken cancellationToken)
    {
        db.Add(cast.House);
        db.AddRange(cast.Everybody.Select(member => member.Person));
        using var accounts = Accounts(db);
        foreach (var member in cast.Everybody)
        {
            var account = new Account { UserName = member.Email, Email = member.Email, PersonId = member.Id };
            var made = await accounts.CreateAsync(account, member.Password);
            if (!made.Succeeded)
            {
                throw new InvalidOperationException(string.Join(" ", made.Errors.Select(error => error.Description)));
            }
        }

        db.Add(new ApiToken(cast.Buyer.Id, "Scripts of the demo", ApiToken.HashOf(Cast.Token), now));
        await db.SaveChangesAsync(cancellationToken);
    }

    /// <summary>Only what holds is told: a changed password and a revoked token are left out.</summary>
    public static async Task<DemoAccess> AccessAsync(LedgerContext db, Cast cast, CancellationToken cancellationToken)
    {
        using var accounts = Accounts(db);
        var signIns = new List<DemoSignIn>();
        foreach (var member in cast.Everybody)
        {
            if (await accounts.FindByEmailAsync(member.Email) is { } account && await accounts.CheckPasswordAsync(account, member.Password))
            {
                signIns.Add(new DemoSignIn(member.Email, member.Password, member.Person.Name, Words(member.Person.Roles)));
            }
        }

        var hash = ApiToken.HashOf(Cast.Token);
        var holds = await db.ApiTokens.AnyAsync(token => token.Hash == hash && token.RevokedAt == null, cancellationToken);
        return new DemoAccess(signIns, holds ? Cast.Token : null);
    }

    private static string Words(Role roles) => string.Join(", ", Enum.GetValues<Role>()
        .Where(role => role != Role.None && roles.HasFlag(role))
        .Select(role => role == Role.LeadCupper ? "lead cupper" : role.ToString().ToLowerInvariant()));

    private static UserManager<Account> Accounts(LedgerContext db) => new(
        new UserOnlyStore<Account, LedgerContext, Guid>(db), Options.Create(new IdentityOptions()), new PasswordHasher<Account>(),
        [new UserValidator<Account>()], [new PasswordValidator<Account>()], new UpperInvariantLookupNormalizer(), new IdentityErrorDescriber(),
        null!, NullLogger<UserManager<Account>>.Instance);
}
