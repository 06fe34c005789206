using GreenLedger.Data.People;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace GreenLedger.Web.Pages.Entrance;

[AllowAnonymous]
public sealed class SignOutModel(SignInManager<Account> entrance) : PageModel
{
    public void OnGet()
    {
    }

    public async Task<IActionResult> OnPostAsync()
    {
        await entrance.SignOutAsync();
        return RedirectToPage("SignIn");
    }
}
