using System.ComponentModel.DataAnnotations;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Web.Archive;
using GreenLedger.Web.Hosting;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.RateLimiting;

namespace GreenLedger.Web.Pages.Entrance;

/// <summary>Opens an empty ledger from the archive of a house.</summary>
[AllowAnonymous]
[OnlyForEmptyHouse]
[DisableRequestSizeLimit]
[RequestFormLimits(MultipartBodyLengthLimit = long.MaxValue)]
[EnableRateLimiting(Security.SignInLimit)]
internal sealed class ReadBackModel(ReadingBack house, SignInManager<Account> entrance) : FormPage
{
    [BindProperty]
    public ReadBackForm Input { get; set; } = new();

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellationToken)
    {
        Rule.Require(Input.File is not null, "Choose the archive first.", nameof(Input.File));
        await using var stream = Input.File.OpenReadStream();
        var account = await house.ReadBackAsync(stream, Input.Email, Input.Password, cancellationToken);
        await entrance.SignInAsync(account, isPersistent: false);
        Say("The house is read back. Under People you make a link for everybody else, with which they choose a new password.");
        return RedirectToPage("/Index");
    }

    internal sealed class ReadBackForm
    {
        [Display(Name = "Archive")]
        public IFormFile? File { get; set; }

        [Required(ErrorMessage = "Please fill in the e-mail address of an administrator of the house.")]
        [EmailAddress(ErrorMessage = "This is not an e-mail address.")]
        [Display(Name = "E-mail of an administrator")]
        public string Email { get; set; } = "";

        [Required(ErrorMessage = "Please choose a password.")]
        [DataType(DataType.Password)]
        [Display(Name = "New password")]
        public string Password { get; set; } = "";
    }
}
