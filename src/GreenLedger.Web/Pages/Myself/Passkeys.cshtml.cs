using System.ComponentModel.DataAnnotations;
using GreenLedger.Data.People;
using GreenLedger.Domain;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.WebUtilities;

namespace GreenLedger.Web.Pages.Myself;

public sealed class PasskeysModel(SignInManager<Account> entrance, UserManager<Account> accounts) : FormPage
{
    private const string NotTaken = "The device's answer could not be taken: please try again.";

    [BindProperty]
    public PasskeyForm Input { get; set; } = new();

    public IReadOnlyList<UserPasskeyInfo> Passkeys { get; private set; } = [];

    public Task OnGetAsync(CancellationToken cancellationToken) => LoadAsync(cancellationToken);

    /// <summary>What the browser needs to make a passkey for this person.</summary>
    public async Task<ContentResult> OnPostOptionsAsync()
    {
        var account = await OwnAsync();
        var options = await entrance.MakePasskeyCreationOptionsAsync(new PasskeyUserEntity
        {
            Id = account.Id.ToString(),
            Name = account.Email ?? "",
            DisplayName = User.PersonName(),
        });
        return Content(options, "application/json");
    }

    public async Task<IActionResult> OnPostAsync(string? credential)
    {
        Rule.Require(!string.IsNullOrEmpty(credential), NotTaken);
        var made = await entrance.PerformPasskeyAttestationAsync(credential);
        Rule.Require(made.Succeeded, NotTaken);
        made.Passkey.Name = Rule.Text(Input.Name, "The device's name", 100, nameof(Input.Name));
        var stored = await accounts.AddOrUpdatePasskeyAsync(await OwnAsync(), made.Passkey);
        Rule.Require(stored.Succeeded, NotTaken);
        Say("The passkey is added: from now on this device signs you in.");
        return RedirectToPage();
    }

    public async Task<IActionResult> OnPostRemoveAsync(string passkey)
    {
        await accounts.RemovePasskeyAsync(await OwnAsync(), WebEncoders.Base64UrlDecode(passkey));
        Say("The passkey is removed.");
        return RedirectToPage();
    }

    protected override async Task LoadAsync(CancellationToken cancellationToken) =>
        Passkeys = [.. await accounts.GetPasskeysAsync(await OwnAsync())];

    private async Task<Account> OwnAsync() => (await accounts.GetUserAsync(User))!;

    public sealed class PasskeyForm
    {
        [Required(ErrorMessage = "Please name this device.")]
        [Display(Name = "Name of this device")]
        public string Name { get; set; } = "";
    }
}
