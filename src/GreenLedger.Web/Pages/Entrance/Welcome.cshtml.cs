using System.ComponentModel.DataAnnotations;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Web.Hosting;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;

namespace GreenLedger.Web.Pages.Entrance;

/// <summary>Where an invitation, or the link for a forgotten password, leads.</summary>
[AllowAnonymous]
[EnableRateLimiting(Security.SignInLimit)]
public sealed class WelcomeModel(Accounts accounts, SignInManager<Account> entrance) : FormPage
{
    [BindProperty(SupportsGet = true)]
    public Guid Account { get; set; }

    [BindProperty(SupportsGet = true)]
    public string Code { get; set; } = "";

    [BindProperty]
    public WelcomeForm Input { get; set; } = new();

    public void OnGet()
    {
    }

    public async Task<IActionResult> OnPostAsync()
    {
        var account = await accounts.FindAsync(Account);
        Rule.Require(account is not null, "This link is not complete: ask for a new one.");
        await accounts.SetPasswordAsync(account, Code, Input.Password);
        Rule.Require(await entrance.CanSignInAsync(account), "This account is closed: ask an administrator of your house.");
        await entrance.SignInAsync(account, isPersistent: false);
        return RedirectToPage("/Index");
    }

    public sealed class WelcomeForm
    {
        [Required(ErrorMessage = "Please choose a password.")]
        [DataType(DataType.Password)]
        [Display(Name = "New password")]
        public string Password { get; set; } = "";
    }
}
