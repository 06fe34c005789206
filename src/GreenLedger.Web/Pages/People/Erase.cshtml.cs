using GreenLedger.Data;
using GreenLedger.Data.Papers;
using GreenLedger.Domain;
using GreenLedger.Domain.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.People;

/// <summary>Erases the data of somebody of the house.</summary>
internal sealed class EraseModel(LedgerContext db, PersonErasure erasing, TimeProvider clock) : ErasePage(db, erasing, clock)
{
    private readonly LedgerContext _db = db;
    private readonly PersonErasure _erasing = erasing;

    [BindProperty(SupportsGet = true)]
    public Id<Person> Id { get; set; }

    protected override Task<ErasedSubject?> FindAsync(CancellationToken cancellationToken) => _erasing.FindAsync(Id, cancellationToken);

    /// <summary>The last administrator is either somebody else, or the one who would erase: two rules, and neither leaves the house without one.</summary>
    protected override async Task RequireAsync(CancellationToken cancellationToken)
    {
        var others = await _db.People.AsNoTracking().Where(person => person.Id != Id && person.IsActive).ToListAsync(cancellationToken);
        Rule.Require(others.Exists(person => person.Roles.HasFlag(Role.Administrator)), "This is the only administrator: make somebody else administrator first.");
        Rule.Require(Id != User.Person(), "Another administrator has to erase your data: you would be signed out on the way.");
    }
}
