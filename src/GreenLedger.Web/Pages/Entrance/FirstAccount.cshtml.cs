using System.ComponentModel.DataAnnotations;
using GreenLedger.Data.People;
using GreenLedger.Domain.Measures;
using GreenLedger.Web.Hosting;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;

namespace GreenLedger.Web.Pages.Entrance;

[AllowAnonymous]
[EnableRateLimiting(Security.SignInLimit)]
public sealed class FirstAccountModel(NewHouse house, SignInManager<Account> entrance) : FormPage
{
    [BindProperty]
    public FirstAccountForm Input { get; set; } = new();

    public async Task<IActionResult> OnGetAsync(CancellationToken cancellationToken) =>
        await house.IsOpenAsync(cancellationToken) ? RedirectToPage("SignIn") : Page();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        if (await house.IsOpenAsync(cancellationToken))
        {
            return RedirectToPage("SignIn");
        }

        var account = await house.OpenAsync(
            Input.House, Currency.Of(Input.Currency), Input.Name, Input.Email, Input.Password, cancellationToken);
        await entrance.SignInAsync(account, isPersistent: false);
        return RedirectToPage("/Index");
    }

    public sealed class FirstAccountForm
    {
        [Required(ErrorMessage = "Please name your house.")]
        [Display(Name = "Name of the house")]
        public string House { get; set; } = "";

        [Required(ErrorMessage = "Choose the currency of the house.")]
        [Display(Name = "Currency of the house")]
        public string Currency { get; set; } = "EUR";

        [Required(ErrorMessage = "Please fill in your name.")]
        [Display(Name = "Your name")]
        public string Name { get; set; } = "";

        [Required(ErrorMessage = "Please fill in your e-mail address.")]
        [EmailAddress(ErrorMessage = "This is not an e-mail address.")]
        [Display(Name = "E-mail")]
        public string Email { get; set; } = "";

        [Required(ErrorMessage = "Please choose a password.")]
        [DataType(DataType.Password)]
        public string Password { get; set; } = "";
    }
}
