using System.Threading.RateLimiting;
using GreenLedger.Web.People;
using Microsoft.AspNetCore.Antiforgery;

namespace GreenLedger.Web.Hosting;

/// <summary>What every answer carries and every request must show: headers, anti-forgery, limits.</summary>
internal static class Security
{
    public const string SignInLimit = "sign-in";

    /// <summary>Of reads at private calendar addresses, which ask for no sign-in.</summary>
    public const string CalendarLimit = "calendar";

    private const string ContentPolicy =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; "
        + "connect-src 'self'; manifest-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

    private static readonly IReadOnlyDictionary<string, string> Headers = new Dictionary<string, string>
    {
        ["X-Content-Type-Options"] = "nosniff",
        ["X-Frame-Options"] = "DENY",
        ["Referrer-Policy"] = "same-origin",
        ["Permissions-Policy"] = "camera=(self), geolocation=(), microphone=(), payment=(), usb=()",
        ["Cross-Origin-Opener-Policy"] = "same-origin",
        ["Cross-Origin-Resource-Policy"] = "same-origin",
    };

    public static WebApplicationBuilder UseSafety(this WebApplicationBuilder builder)
    {
        var perMinute = builder.Configuration.GetValue("GreenLedger:SignInsPerMinute", 10);
        var calendarsPerMinute = builder.Configuration.GetValue("GreenLedger:CalendarReadsPerMinute", 30);
        builder.Services.AddHsts(hsts => hsts.MaxAge = TimeSpan.FromDays(365));
        builder.Services.AddAntiforgery(options =>
        {
            options.HeaderName = "RequestVerificationToken";
            options.Cookie.Name = "GreenLedger.Form";
            options.Cookie.HttpOnly = true;
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        builder.Services.AddRateLimiter(limits =>
        {
            limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limits.AddPolicy(SignInLimit, http => SignInPartition(http, perMinute));
            limits.AddPolicy(CalendarLimit, http => PerAddress(http, calendarsPerMinute));
        });
        return builder;
    }

    /// <summary>Set when the answer starts: what went wrong on the way clears the headers that were set before.</summary>
    public static void UseSecurityHeaders(this WebApplication app) => app.Use((http, next) =>
    {
        http.Response.OnStarting(() =>
        {
            var headers = http.Response.Headers;
            headers.TryAdd("Content-Security-Policy", ContentPolicy);
            foreach (var (name, value) in Headers)
            {
                headers[name] = value;
            }

            return Task.CompletedTask;
        });
        return next();
    });

    /// <summary>No text of ours holds the character with the number 0, and PostgreSQL knows no such text: an address with it is none.</summary>
    public static void UseReadableAddresses(this WebApplication app) => app.Use((http, next) =>
    {
        if (!Uri.UnescapeDataString(http.Request.QueryString.Value ?? "").Contains('\0', StringComparison.Ordinal))
        {
            return next();
        }

        http.Response.StatusCode = StatusCodes.Status400BadRequest;
        return Task.CompletedTask;
    });

    /// <summary>
    /// A script with a token shows it in a header that no other site can send; a browser with a cookie must also
    /// show the anti-forgery token when it changes something through the API.
    /// </summary>
    public static void UseApiAntiforgery(this WebApplication app) => app.Use(async (http, next) =>
    {
        if (http.Request.Path.StartsWithSegments("/api")
            && !HttpMethods.IsGet(http.Request.Method)
            && !HttpMethods.IsHead(http.Request.Method)
            && http.User.Identity is { IsAuthenticated: true, AuthenticationType: not BearerTokens.SchemeName }
            && !await http.RequestServices.GetRequiredService<IAntiforgery>().IsRequestValidAsync(http))
        {
            await Results.Problem(
                "Send a bearer token, or the anti-forgery token in the header RequestVerificationToken.",
                statusCode: StatusCodes.Status400BadRequest).ExecuteAsync(http);
            return;
        }

        await next();
    });

    private static RateLimitPartition<string> SignInPartition(HttpContext http, int perMinute) =>
        HttpMethods.IsPost(http.Request.Method) ? PerAddress(http, perMinute) : RateLimitPartition.GetNoLimiter("reading");

    private static RateLimitPartition<string> PerAddress(HttpContext http, int perMinute) => RateLimitPartition.GetFixedWindowLimiter(
        http.Connection.RemoteIpAddress?.ToString() ?? "",
        _ => new FixedWindowRateLimiterOptions { PermitLimit = perMinute, Window = TimeSpan.FromMinutes(1) });
}
