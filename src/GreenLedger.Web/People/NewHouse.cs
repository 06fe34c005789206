using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.Measures;
using GreenLedger.Domain.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.People;

/// <summary>Opens the ledger of a house that has no account yet: its settings and its first person, in one step.</summary>
public sealed class NewHouse(LedgerContext db, Accounts accounts)
{
    /// <summary>Viewer to administrator: who opens the ledger may do everything in it.</summary>
    public const Role Everything = Role.Viewer | Role.Cupper | Role.LeadCupper | Role.Buyer | Role.Administrator;

    public Task<bool> IsOpenAsync(CancellationToken cancellationToken) => db.Users.AnyAsync(cancellationToken);

    public async Task<Account> OpenAsync(
        string name, Currency currency, string personName, string email, string password, CancellationToken cancellationToken)
    {
        // Of two people who send the first page at the same moment, one opens the ledger and the other is told so.
        await using var transaction = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, cancellationToken);
        Rule.Require(!await IsOpenAsync(cancellationToken), "Somebody has opened this ledger meanwhile: sign in, or ask them for an account.");
        if (!await db.Houses.AnyAsync(cancellationToken))
        {
            db.Houses.Add(new House(name, currency));
        }

        var account = await accounts.AddAsync(new Person(personName, Everything), email, password);
        await transaction.CommitAsync(cancellationToken);
        return account;
    }
}
