using GreenLedger.Data;
using GreenLedger.Data.Archive;
using GreenLedger.Data.People;
using GreenLedger.Documents.Archive;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using GreenLedger.Web.People;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Archive;

/// <summary>Opens an empty house from an archive. Nobody in it has a password yet: one administrator has to get in, and invites the others.</summary>
internal sealed class ReadingBack(LedgerContext db, Accounts accounts)
{
    public Task<bool> IsEmptyAsync(CancellationToken cancellationToken) => HouseIntake.IsEmptyAsync(db, cancellationToken);

    /// <summary>Gives the account of the administrator with this address, who has the password from now on.</summary>
    /// <exception cref="RuleBrokenException">The archive is not whole, the house is in use, or there is no such administrator in it: nothing is changed.</exception>
    public async Task<Account> ReadBackAsync(Stream archive, string email, string password, CancellationToken cancellationToken)
    {
        using var file = await ArchiveFile.OpenAsync(archive, cancellationToken);
        await using var transaction = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, cancellationToken);
        await new HouseIntake(db).ReadBackAsync(file, cancellationToken);
        var account = (await AdministratorsAsync(cancellationToken)).Find(one => string.Equals(one.Email, email.Trim(), StringComparison.OrdinalIgnoreCase));
        Rule.Require(account is not null, "No administrator of the house in this archive has this e-mail address. Nothing was read back.", "Email");
        await accounts.GivePasswordAsync(account, password);
        await transaction.CommitAsync(cancellationToken);
        return account;
    }

    /// <summary>The same from the command line: gives the administrators, for each of whom a link is to be made.</summary>
    /// <exception cref="RuleBrokenException">The archive is not whole, the house is in use, or nobody could get in.</exception>
    public async Task<(string House, IReadOnlyList<Account> Administrators)> ReadBackAsync(Stream archive, CancellationToken cancellationToken)
    {
        using var file = await ArchiveFile.OpenAsync(archive, cancellationToken);
        await using var transaction = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, cancellationToken);
        await new HouseIntake(db).ReadBackAsync(file, cancellationToken);
        var administrators = await AdministratorsAsync(cancellationToken);
        Rule.Require(administrators.Count > 0, "Nobody in this archive is an administrator, so that nobody could get in. Nothing was read back.");
        await transaction.CommitAsync(cancellationToken);
        return (file.House, administrators);
    }

    private async Task<List<Account>> AdministratorsAsync(CancellationToken cancellationToken)
    {
        var active = await db.People.AsNoTracking().Where(person => person.IsActive).ToListAsync(cancellationToken);
        var ids = active.Where(person => person.Roles.HasFlag(Role.Administrator)).Select(person => person.Id).ToHashSet();
        return [.. (await db.Users.ToListAsync(cancellationToken)).Where(account => ids.Contains(account.PersonId))];
    }
}
