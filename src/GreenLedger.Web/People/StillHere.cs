using GreenLedger.Data;
using GreenLedger.Data.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.People;

/// <summary>Who has left the house cannot sign in any more, neither by password nor by passkey.</summary>
internal sealed class StillHere(LedgerContext db) : IUserConfirmation<Account>
{
    public Task<bool> IsConfirmedAsync(UserManager<Account> manager, Account user) =>
        db.People.AnyAsync(person => person.Id == user.PersonId && person.IsActive);
}
