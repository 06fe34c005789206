using System.ComponentModel.DataAnnotations;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Web.Hosting;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;

namespace GreenLedger.Web.Pages.Entrance;

[AllowAnonymous]
[EnableRateLimiting(Security.SignInLimit)]
public sealed class SignInModel(SignInManager<Account> entrance, UserManager<Account> accounts) : FormPage
{
    private const string Refused = "E-mail and password do not fit together, or this account is closed. Please try again.";
    private const string Locked = "Too many wrong passwords: this account is locked for five minutes.";

    [BindProperty]
    public SignInForm Input { get; set; } = new();

    [BindProperty(SupportsGet = true)]
    public string? ReturnUrl { get; set; }

    public void OnGet()
    {
    }

    public async Task<IActionResult> OnPostAsync()
    {
        var account = await accounts.FindByEmailAsync(Input.Email);
        if (account is null)
        {
            // As long as a wrong password takes, so that the time does not tell who has an account.
            accounts.PasswordHasher.HashPassword(new Account(), Input.Password);
        }

        Rule.Require(account is not null, Refused);
        var result = await entrance.PasswordSignInAsync(account, Input.Password, Input.Stay, lockoutOnFailure: true);
        Rule.Require(!result.IsLockedOut, Locked);
        Rule.Require(result.Succeeded, Refused);
        return Onward();
    }

    /// <summary>What the browser needs to ask the device; it names no account, so nothing is given away.</summary>
    public async Task<ContentResult> OnPostPasskeyOptionsAsync() =>
        Content(await entrance.MakePasskeyRequestOptionsAsync(null), "application/json");

    public async Task<IActionResult> OnPostPasskeyAsync(string credential)
    {
        Rule.Require(!string.IsNullOrEmpty(credential), "The passkey did not arrive: please try again.");
        var result = await entrance.PasskeySignInAsync(credential);
        Rule.Require(result.Succeeded, "This passkey is not known here, or its account is closed. Sign in with your password.");
        return Onward();
    }

    private LocalRedirectResult Onward() => LocalRedirect(Url.IsLocalUrl(ReturnUrl) ? ReturnUrl! : "/");

    public sealed class SignInForm
    {
        [Required(ErrorMessage = "Please fill in your e-mail address.")]
        [Display(Name = "E-mail")]
        [EmailAddress(ErrorMessage = "This is not an e-mail address.")]
        public string Email { get; set; } = "";

        [Required(ErrorMessage = "Please fill in your password.")]
        [DataType(DataType.Password)]
        public string Password { get; set; } = "";

        [Display(Name = "Stay signed in on this device")]
        public bool Stay { get; set; }
    }
}
