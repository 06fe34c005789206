using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Domain.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Mvc;

namespace GreenLedger.Web.Pages.People;

public sealed class InviteModel(LedgerContext db, Accounts accounts) : FormPage
{
    [BindProperty]
    public InviteForm Input { get; set; } = new();

    public void OnGet()
    {
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        await using var transaction = await db.Database.BeginTransactionAsync(cancellationToken);
        var person = new Person(Input.Name, RoleNames.Together(Input.Roles));
        var account = await accounts.InviteAsync(person, Input.Email);
        await transaction.CommitAsync(cancellationToken);
        TempData["Link"] = Url.PageLink("/Entrance/Welcome", values: new { account = account.Id, code = await accounts.LinkCodeAsync(account) });
        return RedirectToPage("Person", new { person.Id });
    }

    public sealed class InviteForm
    {
        [Required(ErrorMessage = "Please fill in the name.")]
        public string Name { get; set; } = "";

        [Required(ErrorMessage = "Please fill in the e-mail address: it is what they sign in with.")]
        [EmailAddress(ErrorMessage = "This is not an e-mail address.")]
        [Display(Name = "E-mail")]
        public string Email { get; set; } = "";

        public List<Role> Roles { get; set; } = [];
    }
}
