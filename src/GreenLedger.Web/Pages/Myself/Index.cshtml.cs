using System.ComponentModel.DataAnnotations;
using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Pages.Myself;

public sealed class IndexModel(LedgerContext db, SignInManager<Account> entrance) : FormPage
{
    [BindProperty]
    public UnitForm Input { get; set; } = new();

    public string Email { get; private set; } = "";

    public int Passkeys { get; private set; }

    public int Tokens { get; private set; }

    public async Task OnGetAsync(CancellationToken cancellationToken)
    {
        await LoadAsync(cancellationToken);
        var account = await OwnAsync(cancellationToken);
        Input.Unit = account.ShowsPounds switch { true => "lb", false => "kg", null => "" };
    }

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        var account = await OwnAsync(cancellationToken);
        account.ShowsPounds = Input.Unit switch { "lb" => true, "kg" => false, _ => null };
        await db.SaveChangesAsync(cancellationToken);
        await entrance.RefreshSignInAsync(account);
        Say("Weights are shown to you as you chose.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken)
    {
        var account = await OwnAsync(cancellationToken);
        Email = account.Email ?? "";
        Passkeys = (await entrance.UserManager.GetPasskeysAsync(account)).Count;
        var person = User.Person();
        Tokens = await db.ApiTokens.CountAsync(token => token.OwnerId == person && token.RevokedAt == null, cancellationToken);
    }

    private Task<Account> OwnAsync(CancellationToken cancellationToken)
    {
        var person = User.Person();
        return db.Users.SingleAsync(account => account.PersonId == person, cancellationToken);
    }

    public sealed class UnitForm
    {
        [Display(Name = "Unit of weight")]
        public string? Unit { get; set; }
    }
}
