using System.Security.Claims;
using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Domain.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;

namespace GreenLedger.Web.People;

/// <summary>Puts the person, the roles and the unit of weight into the cookie, renewed every minute from the ledger.</summary>
internal sealed class AccountClaims(
    UserManager<Account> accounts, IOptions<IdentityOptions> options, LedgerContext db)
    : UserClaimsPrincipalFactory<Account>(accounts, options)
{
    /// <summary>The claims of a person, the same for a cookie and for a token.</summary>
    public static IEnumerable<Claim> Of(Person person, bool showsPounds)
    {
        yield return new Claim(SignedIn.PersonClaim, person.Id.ToString());
        yield return new Claim(SignedIn.RolesClaim, (person.IsActive ? person.Roles : Role.None).ToString());
        yield return new Claim(SignedIn.PoundsClaim, showsPounds ? "true" : "false");
    }

    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(Account user)
    {
        var identity = await base.GenerateClaimsAsync(user);
        var person = await db.People.AsNoTracking().SingleAsync(one => one.Id == user.PersonId);
        var house = await db.Houses.AsNoTracking().SingleOrDefaultAsync();
        identity.TryRemoveClaim(identity.FindFirst(Options.ClaimsIdentity.UserNameClaimType));
        identity.AddClaim(new Claim(Options.ClaimsIdentity.UserNameClaimType, person.Name));
        identity.AddClaims(Of(person, user.ShowsPounds ?? house?.ShowsPounds ?? false));
        return identity;
    }
}
