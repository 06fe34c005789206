using System.ComponentModel.DataAnnotations;
using GreenLedger.Data.People;
using GreenLedger.Web.Hosting;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;

namespace GreenLedger.Web.Pages.Myself;

[EnableRateLimiting(Security.SignInLimit)]
public sealed class PasswordModel(Accounts accounts, SignInManager<Account> entrance) : FormPage
{
    [BindProperty]
    public PasswordForm Input { get; set; } = new();

    public void OnGet()
    {
    }

    public async Task<IActionResult> OnPostAsync()
    {
        var account = (await entrance.UserManager.GetUserAsync(User))!;
        await accounts.ChangePasswordAsync(account, Input.OldPassword, Input.Password);
        await entrance.RefreshSignInAsync(account);
        Say("Your password is changed. Other devices are signed out within a minute.");
        return RedirectToPage("Index");
    }

    public sealed class PasswordForm
    {
        [Required(ErrorMessage = "Please fill in your present password.")]
        [DataType(DataType.Password)]
        [Display(Name = "Present password")]
        public string OldPassword { get; set; } = "";

        [Required(ErrorMessage = "Please choose a new password.")]
        [DataType(DataType.Password)]
        [Display(Name = "New password")]
        public string Password { get; set; } = "";
    }
}
