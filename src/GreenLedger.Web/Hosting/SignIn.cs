using GreenLedger.Data;
using GreenLedger.Data.People;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace GreenLedger.Web.Hosting;

/// <summary>Accounts, cookies and tokens, and the one policy that every route stands under.</summary>
internal static class SignIn
{
    private const string CookieOrToken = "CookieOrToken";

    public static WebApplicationBuilder UseAccounts(this WebApplicationBuilder builder)
    {
        builder.Services.AddIdentityCore<Account>(Rules)
            .AddEntityFrameworkStores<LedgerContext>()
            .AddClaimsPrincipalFactory<AccountClaims>()
            .AddSignInManager()
            .AddDefaultTokenProviders();
        var schemes = builder.Services.AddAuthentication(CookieOrToken)
            .AddPolicyScheme(CookieOrToken, null, choice => choice.ForwardDefaultSelector = Choose)
            .AddScheme<AuthenticationSchemeOptions, BearerTokens>(BearerTokens.SchemeName, null);
        schemes.AddIdentityCookies();
        builder.Services.Configure<SecurityStampValidatorOptions>(stamp => stamp.ValidationInterval = TimeSpan.FromMinutes(1));
        builder.Services.ConfigureApplicationCookie(Cookie);
        builder.Services.AddSingleton<IAuthorizationHandler, AreaRequirement>();
        builder.Services.AddScoped<Accounts>().AddScoped<NewHouse>().AddScoped<IUserConfirmation<Account>, StillHere>();
        var everywhere = new AuthorizationPolicyBuilder().RequireAuthenticatedUser().AddRequirements(new AreaRequirement()).Build();
        builder.Services.AddAuthorizationBuilder().SetDefaultPolicy(everywhere).SetFallbackPolicy(everywhere);
        return builder;
    }

    private static string Choose(HttpContext http) =>
        http.Request.Path.StartsWithSegments("/api") && BearerTokens.IsShown(http.Request)
            ? BearerTokens.SchemeName
            : IdentityConstants.ApplicationScheme;

    /// <summary>Length over composition (NIST SP 800-63B, 5.1.1.2, from memory); five wrong tries lock for 5 minutes.</summary>
    private static void Rules(IdentityOptions identity)
    {
        identity.Stores.SchemaVersion = IdentitySchemaVersions.Version3;
        identity.SignIn.RequireConfirmedAccount = true;
        identity.User.RequireUniqueEmail = true;
        identity.Password.RequiredLength = 12;
        identity.Password.RequireDigit = false;
        identity.Password.RequireLowercase = false;
        identity.Password.RequireUppercase = false;
        identity.Password.RequireNonAlphanumeric = false;
        identity.Password.RequiredUniqueChars = 5;
        identity.Lockout.MaxFailedAccessAttempts = 5;
        identity.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(5);
    }

    private static void Cookie(CookieAuthenticationOptions cookie)
    {
        cookie.Cookie.Name = "GreenLedger";
        cookie.Cookie.HttpOnly = true;
        cookie.Cookie.SameSite = SameSiteMode.Lax;
        cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        cookie.ExpireTimeSpan = TimeSpan.FromDays(14);
        cookie.LoginPath = "/Entrance/SignIn";
        cookie.Events.OnRedirectToLogin = AskToSignInAsync;
        cookie.Events.OnRedirectToAccessDenied = refused =>
        {
            refused.Response.StatusCode = StatusCodes.Status403Forbidden;
            return Task.CompletedTask;
        };
    }

    /// <summary>The API answers 401; a page leads to sign-in, or to the first account while there is none.</summary>
    private static async Task AskToSignInAsync(RedirectContext<CookieAuthenticationOptions> asked)
    {
        if (asked.Request.Path.StartsWithSegments("/api") || asked.Request.Path.StartsWithSegments("/openapi"))
        {
            asked.Response.StatusCode = StatusCodes.Status401Unauthorized;
            asked.Response.Headers.WWWAuthenticate = BearerTokens.SchemeName;
            return;
        }

        var db = asked.HttpContext.RequestServices.GetRequiredService<LedgerContext>();
        var hasAccounts = await db.Users.AnyAsync(asked.HttpContext.RequestAborted);
        asked.Response.Redirect(hasAccounts ? asked.RedirectUri : "/Entrance/FirstAccount");
    }
}
