using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Domain.Papers;
using GreenLedger.Domain.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.People;

public sealed class PersonModel(LedgerContext db, Accounts accounts) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Id<Person> Id { get; set; }

    [BindProperty]
    public PersonForm Input { get; set; } = new();

    public string Name { get; private set; } = "";

    public string Email { get; private set; } = "";

    public bool IsActive { get; private set; }

    /// <summary>Null unless the data of this person were erased.</summary>
    public Erasure? Erased { get; private set; }

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } person)
        {
            return NotFound();
        }

        await LoadAsync(cancellationToken);
        Input = new PersonForm { Name = person.Name, Roles = [.. RoleNames.All.Where(role => person.Roles.HasFlag(role))] };
        return Page();
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } person)
        {
            return NotFound();
        }

        var roles = RoleNames.Together(Input.Roles);
        await using var transaction = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, cancellationToken);
        await KeepAnAdministratorAsync(roles.HasFlag(Role.Administrator), cancellationToken);
        person.Rename(Input.Name);
        person.Give(roles);
        await db.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
        Say($"{person.Name} is saved. Changed roles hold within a minute.");
        return RedirectToPage(new { Id });
    }

    public async Task<IActionResult> OnPostLinkAsync(CancellationToken cancellationToken)
    {
        var account = await AccountAsync(cancellationToken);
        TempData["Link"] = Url.PageLink(
            "/Entrance/Welcome", values: new { account = account.Id, code = await accounts.LinkCodeAsync(account) });
        return RedirectToPage(new { Id });
    }

    public async Task<IActionResult> OnPostLeaveAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } person)
        {
            return NotFound();
        }

        await using var transaction = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, cancellationToken);
        await KeepAnAdministratorAsync(staysAdministrator: false, cancellationToken);
        person.Leave();
        await accounts.RevokeTokensAsync(person.Id);
        await transaction.CommitAsync(cancellationToken);
        await accounts.SignOutEverywhereAsync(await AccountAsync(cancellationToken));
        Say($"The account of {person.Name} is closed. It can be opened again.");
        return RedirectToPage(new { Id });
    }

    public async Task<IActionResult> OnPostReturnAsync(CancellationToken cancellationToken)
    {
        if (await FindAsync(cancellationToken) is not { } person)
        {
            return NotFound();
        }

        person.Return();
        await db.SaveChangesAsync(cancellationToken);
        Say($"{person.Name} may sign in again.");
        return RedirectToPage(new { Id });
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var person = await db.People.AsNoTracking().SingleAsync(one => one.Id == Id, cancellationToken);
        var account = await db.Users.AsNoTracking().SingleOrDefaultAsync(one => one.PersonId == Id, cancellationToken);
        Erased = await db.Erasures.AsNoTracking().SingleOrDefaultAsync(erasure => erasure.SubjectId == Id.Value, cancellationToken);
        (Name, IsActive, Email) = (person.Name, person.IsActive, account?.Email ?? "");
    }

    /// <summary>Whose data were erased can be read and not changed.</summary>
    protected override async Task<bool> IsThereAsync(CancellationToken cancellationToken) =>
        HttpMethods.IsGet(Request.Method) || await db.Users.AnyAsync(account => account.PersonId == Id, cancellationToken);

    private Task<Person?> FindAsync(CancellationToken cancellationToken) =>
        db.People.SingleOrDefaultAsync(person => person.Id == Id, cancellationToken);

    private Task<Account> AccountAsync(CancellationToken cancellationToken) =>
        db.Users.SingleAsync(account => account.PersonId == Id, cancellationToken);

    /// <summary>A house without an administrator could never get one again.</summary>
    private async Task KeepAnAdministratorAsync(bool staysAdministrator, CancellationToken cancellationToken)
    {
        var others = await db.People.AsNoTracking().Where(person => person.Id != Id && person.IsActive).ToListAsync(cancellationToken);
        Rule.Require(
            staysAdministrator || others.Exists(person => person.Roles.HasFlag(Role.Administrator)),
            "This is the only administrator: make somebody else administrator first.",
            nameof(Input.Roles));
    }

    public sealed class PersonForm
    {
        [Required(ErrorMessage = "Please fill in the name.")]
        public string Name { get; set; } = "";

        public List<Role> Roles { get; set; } = [];
    }
}
