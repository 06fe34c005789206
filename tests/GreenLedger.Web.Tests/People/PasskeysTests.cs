using GreenLedger.Domain.People;
using GreenLedger.Web.Tests.InBrowser;

namespace GreenLedger.Web.Tests.People;

/// <summary>In the machine's own browser, with a device of its own making in the place of a finger.</summary>
public sealed class PasskeysTests(Chromium chromium)
{
    private static readonly Dictionary<string, object> Device = new()
    {
        ["options"] = new Dictionary<string, object>
        {
            ["protocol"] = "ctap2",
            ["transport"] = "internal",
            ["hasResidentKey"] = true,
            ["hasUserVerification"] = true,
            ["isUserVerified"] = true,
            ["automaticPresenceSimulation"] = true,
        },
    };

    [Fact]
    public async Task A_passkey_is_added_signs_in_and_no_longer_does_once_removed()
    {
        await using var house = new HouseFixture().Serve();
        await house.OpenHouseAsync();
        await using var window = await chromium.OpenAsync(SiteOf(house));
        var devices = await window.Page.Context.NewCDPSessionAsync(window.Page);
        await devices.SendAsync("WebAuthn.enable");
        await devices.SendAsync("WebAuthn.addVirtualAuthenticator", Device);

        await window.SignInAsync(HouseFixture.EmailOf(Role.Cupper), HouseFixture.Password);
        await window.GoAsync("/Myself/Passkeys");
        await window.Page.Locator("[name='Input.Name']").FillAsync("Phone at the table");
        await window.Page.Locator("button:has-text('Add a passkey')").ClickAsync();
        await window.Page.Locator("th:has-text('Phone at the table')").WaitForAsync();
        await SignOutAsync(window);
        await SignInByPasskeyAsync(window);
        await window.Page.Locator(".account-name:has-text('A Cupper')").WaitForAsync();

        await window.GoAsync("/Myself/Passkeys");
        window.Page.Dialog += (_, question) => question.AcceptAsync();
        await window.Page.Locator("button:has-text('Remove')").ClickAsync();
        await window.Page.Locator("h2:has-text('No passkey yet')").WaitForAsync();
        await SignOutAsync(window);
        await SignInByPasskeyAsync(window);
        await window.Page.Locator("[data-errors]:has-text('not known here')").WaitForAsync();
    }

    /// <summary>Browsers keep passkeys for names, not for numbers.</summary>
    private static Uri SiteOf(HouseFixture house) => new UriBuilder(house.ClientOptions.BaseAddress) { Host = "localhost" }.Uri;

    private static async Task SignOutAsync(Window window)
    {
        await window.Page.Context.ClearCookiesAsync();
        await window.GoAsync("/Entrance/SignIn");
    }

    private static Task SignInByPasskeyAsync(Window window) =>
        window.Page.Locator("button:has-text('Sign in with a passkey')").ClickAsync();
}
